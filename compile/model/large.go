package model

// largeParts is of how many parts a build is at most whose page has everything in one file.
const largeParts = 3000

// Large reports whether a build is too large to be looked at as one page with all its pictures.
func (m *Model) Large() bool { return len(m.Parts) > largeParts }
