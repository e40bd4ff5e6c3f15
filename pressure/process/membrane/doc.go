// Package membrane answers how much water a spiral-wound seawater element makes, and how
// salty, by solution and diffusion with concentration polarisation.
//
// An [Element] is what its data sheet says of it; [Element.Calibrate] turns the sheet's
// test into two permeabilities, water's and salt's, and a channel: a [Unit]. A [Row] is
// units that the brine passes one after the other; [Row.Solve] marches along it in four
// slices an element, with the balance of water and of salt exact. [Row.PressureFor] and
// [Row.FeedFor] ask the other way round; [Row.Band] gives the ends of all that can be.
// [ClassOf] is what is usual for an element of a size, where nobody says better.
//
// # The model
//
// At each point the flux is J = A (P - Pp - pi(s_m) + pi(s_p)), the salt behind it
// cp = B cm/(J + B), and the salt at the membrane cm/cb = E (J + B)/(J + B E), with
// E = exp(J/k). Film: Sh = 0.065 Re^0.875 Sc^0.25; friction f = 6.23/Re^0.3, both Schock
// and Miquel, Desalination 64 (1987) 339-352 (the film from memory). Temperature: [TCF]
// multiplies A and B. The film is known to -25/+50 % only (judgement): no more should be
// read from a figure than that leaves.
//
// # What it does not do
//
// Scaling, fouling by what the water carries, boron, pH: none of it is here. It refuses
// water below freezing and above 45 C.
package membrane
