// Package file is the one way in and the one way out of files: it reads a regular file
// within bounds, and writes one whole or not at all.
//
// [Read] refuses at once what is no regular file (a folder, a pipe, a socket, a device),
// what is larger than its [Limit], and a disk that does not answer. [To] looks at the place
// that is to be written before the work begins; [Output.Write] writes beside it and moves
// the new file there once it is whole.
//
// It does not look into files: whose a file is, is told by those who know its format.
package file
