package read

// What a build may hold at most. A plant has some hundred parts, a shop's list that is
// included some thousand: beyond these it is a mistake, and is refused before time and
// memory go into it.
const (
	mostIncludes = 1000    // files that a build includes
	mostParts    = 20_000  // items and hoses of all its files
	mostSteps    = 100_000 // units on all paths
)
