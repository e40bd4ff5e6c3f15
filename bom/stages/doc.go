// Package stages says which joints get wet when: the leak test of a plant, stage by stage,
// and the order of its acts when it is first started, run, flushed and laid up.
//
// [Of] takes a build that has been walked and gives a [Sheet] for each plant in it. Every
// stage is a way for the valves to stand; from it follows which joints water reaches, which
// it runs through, and which of those are new. Nothing is listed from memory of another
// plant: a valve that the build has not is not named, and a joint that no stage wets is said
// to be wetted by none.
//
// It does not judge strength: a stage in which some part sees more than it holds is not to
// be made, and says so.
package stages
