// Package schema makes a JSON Schema (draft 7) of build files, from which editors complete
// and check TOML as it is typed.
//
// It keeps no list of keys: [Of] has the reader of builds read a sample that holds one of each
// section and of each kind of part, and listens to what it asks for. A schema sees names,
// types, words and the form of quantities; joints, pressures and references it cannot see:
// `check` does.
package schema
