package sheet

import (
	"math"
	"strings"

	"slabwright/model/unit"
)

// say says a word or a sentence in the language of the sheets: the English is
// the key of its tables.
func (m *maker) say(english string) string { return m.lang.Say(english) }

// sayf says a whole sentence with names and figures in it.
func (m *maker) sayf(english string, args ...any) string { return m.lang.Sayf(english, args...) }

// heads says the heads of a table.
func (m *maker) heads(english ...string) []string {
	out := make([]string, len(english))
	for i, s := range english {
		out[i] = m.say(s)
	}
	return out
}

// pass says what a lower package has written in English.
func (m *maker) pass(english string) string { return m.style.InText(m.lang.Pass(english)) }

// found writes what a finding says: in English, its lengths as all others.
func (m *maker) found(english string) string { return m.style.InText(english) }

// passAll says a text of a lower package piece by piece, between semicolons and
// behind the names that a colon ends.
func (m *maker) passAll(english string) string {
	pieces := strings.Split(english, "; ")
	if known := m.lang.Pass(english) != english; known || len(pieces) == 1 {
		if names, what, ok := strings.Cut(english, ": "); ok && !known {
			return strings.Join(m.passEach(strings.Split(names, ", ")), ", ") + ": " + m.pass(what)
		}
		return m.pass(english)
	}
	for i, s := range pieces {
		pieces[i] = m.passAll(s)
	}
	return strings.Join(pieces, "; ")
}

// passEach says each of some texts of a lower package.
func (m *maker) passEach(english []string) []string {
	out := make([]string, len(english))
	for i, s := range english {
		out[i] = m.pass(s)
	}
	return out
}

// passSentences says a finding of a lower package sentence by sentence.
func (m *maker) passSentences(english string) string {
	sentences := strings.SplitAfter(english, ". ")
	for i, s := range sentences {
		sentences[i] = m.pass(strings.TrimSpace(s))
	}
	return strings.Join(sentences, " ")
}

// about writes an estimate: to a whole millimetre, or the fraction of an inch.
func (m *maker) about(l unit.Length) string { return m.length(unit.Length(math.Round(float64(l)))) }

// named adds the unit to a length as written; inches carry theirs.
func (m *maker) named(length string) string {
	switch m.style.Unit {
	case "in":
		return length
	case "cm":
		return length + " cm"
	}
	return length + " mm"
}
