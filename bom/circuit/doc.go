// Package circuit answers which ports share a pressure, and what may change between them.
//
// [New] contracts a graph: ports that always share one pressure are a junction, and a
// [Link] between two junctions is a passage that an act, dirt or a pump can change. A
// [Condition] says how the build stands; [Circuit.Network] gives one connected part of it
// in a condition as a plain network for the solver. [Circuit.Reach], [Circuit.Reaches] and
// [Circuit.Cuts] follow water along the links, [Circuit.DischargeOf] to where it ends, and
// [Circuit.ReliefsOf] lists the relief valves of a pump.
package circuit
