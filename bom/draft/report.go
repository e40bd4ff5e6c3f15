package draft

// Missing is something to buy, or a role that no part has.
type Missing struct {
	Where string   `json:"where,omitempty"` // the ports that it joins
	Line  string   `json:"run,omitempty"`
	What  string   `json:"what"`
	Buy   []string `json:"buy,omitempty"` // in shop words
	Note  string   `json:"note,omitempty"`
	Role  bool     `json:"role,omitempty"`  // a part that a plant needs
	Need  string   `json:"need,omitempty"`  // of a role: needed, usual
	Count bool     `json:"count,omitempty"` // what joints ask for, and the lists have too few of
	Stop  bool     `json:"stop,omitempty"`  // nothing that is made joins the ends
}

// Misfit is a piece of the lists that would go there, if it were another.
type Misfit struct {
	Where string `json:"line"` // of the list
	Text  string `json:"text"`
	Place string `json:"place,omitempty"`
	Why   string `json:"why"`
}

// Left is what no place takes.
type Left struct {
	Where string `json:"line"`
	Text  string `json:"text"`
	Count int    `json:"count"`
	Spare bool   `json:"spare,omitempty"` // more of a part that the plant has
}

// Question is one thing to ask, with what was taken meanwhile.
type Question struct {
	Key     string   `json:"key"`
	Ask     string   `json:"ask"`
	Why     string   `json:"why,omitempty"`
	Choices []string `json:"choices,omitempty"`
	Default string   `json:"default,omitempty"` // "" where none is taken
	Answer  string   `json:"answer,omitempty"`
	Lines   []string `json:"lines,omitempty"` // of the lists
}
