package main

import (
	"bufio"
	"fmt"
	"strings"

	"handtight/bom/cart"
)

// askCart asks each question that has choices and notes the answers. It stops where the
// input ends; what was not answered stays open. Prompts go where trouble goes, so that
// they are no part of the report.
func (a *app) askCart(r *cart.Report, confirmed *cart.Accepted) {
	answers := bufio.NewScanner(a.in)
	for i := range r.Questions {
		q := &r.Questions[i]
		if len(q.Choices) == 0 {
			continue
		}
		a.ui.prompt(fmt.Sprintf("%s line %d: %s\n  %s: ", q.Cart, q.Line, q.Ask, choices(q.Choices)))
		for answers.Scan() {
			text := strings.TrimSpace(answers.Text())
			if text == "" || q.Answer(confirmed, text) {
				break
			}
			a.ui.prompt(fmt.Sprintf("  %q is none of the answers; %s: ", text, choices(q.Choices)))
		}
		if answers.Err() != nil {
			return
		}
	}
}

// choices lists the answers: "1 tail-g34, 2 tail-n34, n none of them, Enter to leave it open".
func choices(items []string) string {
	if len(items) == 1 {
		return fmt.Sprintf("y for %s, n for none of the build's, Enter to leave it open", items[0])
	}
	var out []string
	for i, item := range items {
		out = append(out, fmt.Sprintf("%d %s", i+1, item))
	}
	return strings.Join(out, ", ") + ", n for none of them, Enter to leave it open"
}

// prompt prints a question that waits for its answer on the same line.
func (u *ui) prompt(text string) { fmt.Fprint(u.errOut, text) }
