package title

import "testing"

// A hose with threads at its ends is no tail; a hose beside one thread is what a tail takes.
func TestWholeHoses(t *testing.T) {
	readMeant(t, []lineMeant{
		{"one size at both ends", "Hose 1/2 NPT male both ends", "NPT 1/2 male; NPT 1/2 male"},
		{"a size at each end", "Hose 3/8 BSPP F x 3/8 BSPP F", "G 3/8 female; G 3/8 female"},
		{"with its bore", "Hose DN10 12L female swivel both ends", "24L 12L female swivel; 24L 12L female swivel"},
		{"sexes of two ends", "Hose F/F 1/2 NPT", "NPT 1/2 female; NPT 1/2 female"},
		{"a bore and a thread", "Hose 19 mm x 1/2 NPT male", "BARB 19 mm; NPT 1/2 male"},
		{"the bore behind", "Hose 1/2 NPT male x 13 mm", "NPT 1/2 male; BARB 13 mm"},
		{"one thread: what hose it takes is asked", "Hose 1/2 NPT male", "NPT 1/2 male; BARB "},
		{"the word behind the size is the tail's", "3/4 hose x 1/2 NPT male", "BARB 3/4 in; NPT 1/2 male"},
	})
}

// A tail has a hose's size, its own or the thread's where flares are called by their tube.
func TestTheTailsSize(t *testing.T) {
	readMeant(t, []lineMeant{
		{"it is not said", "Hose tail 3/4 BSPP male", "G 3/4 male; BARB "},
		{"a flare's is its tube's", "Hose tail -8 JIC female swivel", "JIC -8 female swivel; BARB 1/2 in"},
		{"in inches too", "Hose tail 1/2 JIC female swivel", "JIC -8|-5 female swivel; BARB 1/2 in"},
		{"a dash is sixteenths of an inch of hose", "Hose tail -8 x 1/2 NPT male", "BARB 1/2 in; NPT 1/2 male"},
		{"a hyphen that parts is no dash", "Hose tail 3/4 BSPP male - 16 mm", "G 3/4 male; BARB 16 mm"},
		{"a tap that takes a hose", "Garden tap 1/2 NPT male with hose barb", "NPT 1/2 male"},
		{"a garden hose's bore beside its one thread (ASME B1.20.7)", "5/8 GHT female hose coupling", "NH 3/4 female; BARB 5/8 in"},
		{"3/4 garden hose is the thread alone", "Hose tail 3/4 GHT female x 5/8", "NH 3/4 female; BARB 5/8 in"},
		{"inch and a quarter is no garden hose's bore", "Adaptor 1 1/4 NH female x 3/4 NPT male", "?; NPT 3/4 male"},
	})
	readMeantEnds(t, []lineMeant{
		{"dashes are sixteenths: -8 is half an inch", "-8 barb", "BARB 1/2 in"},
		{"in millimetres a hyphen parts nothing", "barb -8 mm", "BARB 8 mm"},
		{"-10 is five eighths", "-10 barb", "BARB 5/8 in"},
	})
}

// Millimetres without a word of their own are what the line calls its tubes.
func TestWhatTheLineCallsItsTubes(t *testing.T) {
	readMeant(t, []lineMeant{
		{"a compression elbow of two tubes", "Compression elbow 15 mm x 12 mm", "COMP 15 mm; COMP 12 mm"},
		{"a push-in with a thread", "Push-in adaptor 8 mm x 1/4 NPT male", "PUSH 8 mm; NPT 1/4 male"},
		{"no word: the grip is asked", "Elbow 12 mm x 1/2 NPT male", "TUBE 12 mm; NPT 1/2 male"},
		{"of a hose tail it is the tail", "Hose tail 12 mm x 1/2 NPT male", "BARB 12 mm; NPT 1/2 male"},
		{"of glued pipe it is a socket, which is not judged", "PVC adaptor 25 mm x 3/4 NPT male", "NPT 3/4 male plastic"},
		{"a press fitting's tube neither", "Press adaptor 22 mm x 3/4 NPT male", "NPT 3/4 male"},
	})
}
