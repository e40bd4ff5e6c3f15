// Package title reads what a shop writes of a part: its ends, its kind, its
// material and its rating, in the languages of the lists under lexicon/.
//
// [Read] takes a shop's line and answers a [threads.Reading]; [ReadEnd] takes
// the text of exactly one end, such as a build file holds, and answers a
// [threads.EndReading] or a [ReadError]. An end that the words leave open has
// several candidates and the one question that decides.
//
// It does not judge whether ends fit: see package threads. How a line goes through:
//
//   - the cells of a dump's row parted (cells.go), spelled to one alphabet (normal.go) and cut
//     into tokens (scan.go, number.go, fractions.go, french.go, pitch.go, units.go, eastern.go, date.go);
//   - the part named (survey.go) and its words told by their neighbours (word_steps.go: letters.go, sex_letters.go, hose_words.go, trade_letters.go,
//     trade_words.go, small_words.go, metres.go, neighbours.go, company.go), codes of trades that say ends
//     read (pneumatic.go, cutting_ring.go, camlock.go, partnumber.go);
//   - what numbers its ends or the part taken out (marks.go, partnumber.go), degrees and
//     hands that are no threads told (heat.go, hand.go), sexes counted in words (spoken_counts.go), and what it goes onto taken out (onto.go);
//   - its figures given roles (classify.go, role.go, sizes.go, repeats.go, walls.go,
//     bores.go, lengths.go, counts.go, count_alone.go, codes.go, money.go, receipt.go, thousands.go, class.go; ports in port_counts.go and numbered_ports.go, of two
//     sizes one in either.go, and pressures in rating.go, heat_of_rating.go and standards.go, paired with their words in pressure_pairs.go, which tells another part's too, and kept from
//     a rating where the words are not plain in pressure_doubt.go);
//   - parted into phrases (phrase.go, chunk.go, foreign.go, end_words.go), and what is said once distributed over
//     the ends by named steps, each with the line that shows it (steps.go: distribute.go,
//     relocate.go, seal_places.go, tee_sexes.go, ends.go for how many ends there are,
//     inherit.go for what a bare one takes from its neighbour, ports.go, spread.go for the
//     sexes dealt out, sexes.go, kind_sexes.go, mention.go; hoses: hose_bore.go, hose_metric.go, hoses.go, assembly.go, tails.go);
//   - each phrase resolved to candidates (resolve.go, pipe_families.go, plain_ends.go, unified.go) with its question
//     (question.go) or what contradicts in it (conflict.go);
//   - what the line says and no end has asked (unheard.go), what the part may not be used
//     for told (limits.go), and what was understood and changes nothing named (notused.go,
//     unspent.go).
//
// Sorts of parts carry their traits in lexicon/shape.csv (trait.go), and words that are
// sought in the text itself stand in lexicon/lists.csv (wordlists.go).
package title
