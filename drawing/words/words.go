// Package words holds the words of the sheets in other languages. The English
// sentence stands in the code where it is said and is the key of every table:
//
//	l.Say("Top face, visible side")
//	l.Sayf("wall %s, under %s", wall, slab)
//
// A sentence is whole, never pieced together, so that each language can order
// its words: a table may number its verbs (%[2]s). Where one English word needs
// two translations a remark tells them apart; it is not printed:
//
//	l.Say("seat // of a person")
//
// A second language is one file with one Language, and its line in All.
package words

import (
	"fmt"
	"strings"
	"sync"
)

// Language is how one language says the sentences of the sheets. The zero value
// and nil are English.
type Language struct {
	Code    string            // "en", "de": the value of show.language in a job
	Name    string            // in the language itself
	Decimal string            // usual decimal sign, "." or ","
	Table   map[string]string // translations by English sentence: what the sheets say
	Below   map[string]string // the same of words and formats of the packages below, which sheets pass on

	once     sync.Once
	patterns []pattern
}

// English has no table: it is what stands in the code.
var English = &Language{Code: "en", Name: "English", Decimal: "."}

// All lists the languages.
var All = []*Language{English, german}

// Of gives the language with a code, English when there is none.
func Of(code string) *Language {
	for _, l := range All {
		if l.Code == code {
			return l
		}
	}
	return English
}

// Say says a word or a sentence. What the table lacks is said in English.
func (l *Language) Say(english string) string { return bare(l.entry(english)) }

// Sayf says a sentence with figures and names in it, as fmt.Sprintf.
func (l *Language) Sayf(english string, args ...any) string {
	return fmt.Sprintf(bare(l.entry(english)), args...)
}

func (l *Language) entry(english string) string {
	if l != nil {
		if s, ok := l.Table[english]; ok {
			return s
		}
	}
	return english
}

const remark = " // "

// bare drops the remark that tells equal words apart.
func bare(s string) string {
	s, _, _ = strings.Cut(s, remark)
	return s
}
