package pattern

// MatchString is [regexp.Regexp.MatchString].
func (p *Pattern) MatchString(s string) bool {
	return p.needs().met(s) && p.compiled().MatchString(s)
}

// FindString is [regexp.Regexp.FindString].
func (p *Pattern) FindString(s string) string {
	if !p.needs().met(s) {
		return ""
	}
	return p.compiled().FindString(s)
}

// FindStringIndex is [regexp.Regexp.FindStringIndex].
func (p *Pattern) FindStringIndex(s string) []int {
	if !p.needs().met(s) {
		return nil
	}
	return p.compiled().FindStringIndex(s)
}

// FindStringSubmatch is [regexp.Regexp.FindStringSubmatch].
func (p *Pattern) FindStringSubmatch(s string) []string {
	if !p.needs().met(s) {
		return nil
	}
	return p.compiled().FindStringSubmatch(s)
}

// FindStringSubmatchIndex is [regexp.Regexp.FindStringSubmatchIndex].
func (p *Pattern) FindStringSubmatchIndex(s string) []int {
	if !p.needs().met(s) {
		return nil
	}
	return p.compiled().FindStringSubmatchIndex(s)
}

// FindAllString is [regexp.Regexp.FindAllString].
func (p *Pattern) FindAllString(s string, n int) []string {
	if !p.needs().met(s) {
		return nil
	}
	return p.compiled().FindAllString(s, n)
}

// FindAllStringSubmatch is [regexp.Regexp.FindAllStringSubmatch].
func (p *Pattern) FindAllStringSubmatch(s string, n int) [][]string {
	if !p.needs().met(s) {
		return nil
	}
	return p.compiled().FindAllStringSubmatch(s, n)
}

// FindAllStringSubmatchIndex is [regexp.Regexp.FindAllStringSubmatchIndex].
func (p *Pattern) FindAllStringSubmatchIndex(s string, n int) [][]int {
	if !p.needs().met(s) {
		return nil
	}
	return p.compiled().FindAllStringSubmatchIndex(s, n)
}

// ReplaceAllString is [regexp.Regexp.ReplaceAllString].
func (p *Pattern) ReplaceAllString(s, with string) string {
	if !p.needs().met(s) {
		return s
	}
	return p.compiled().ReplaceAllString(s, with)
}

// ReplaceAllStringFunc is [regexp.Regexp.ReplaceAllStringFunc].
func (p *Pattern) ReplaceAllStringFunc(s string, with func(string) string) string {
	if !p.needs().met(s) {
		return s
	}
	return p.compiled().ReplaceAllStringFunc(s, with)
}

// Split is [regexp.Regexp.Split].
func (p *Pattern) Split(s string, n int) []string { return p.compiled().Split(s, n) }
