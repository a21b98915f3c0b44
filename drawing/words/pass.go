package words

import (
	"regexp"
	"sort"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Pass says what a lower package has written in English already: a word, or a
// sentence that was made of one of its formats. What is in the places of the
// format is passed on in the same way, and names go word by word. Names of the user's
// and other unknown texts stay as they are.
func (l *Language) Pass(english string) string {
	if l == nil || len(l.Below) == 0 {
		return english
	}
	for _, table := range []map[string]string{l.Below, l.Table} {
		if s, ok := table[english]; ok {
			return bare(s)
		}
	}
	l.once.Do(l.compile)
	for _, p := range l.patterns {
		if found := p.match.FindStringSubmatch(english); found != nil {
			return p.fill(l, found[1:])
		}
	}
	if first, rest := utf8.DecodeRuneInString(english); unicode.IsUpper(first) { // a name that begins a sentence
		small := string(unicode.ToLower(first)) + english[rest:]
		if s := l.Pass(small); s != small {
			return s
		}
	}
	return l.wordByWord(english)
}

// wordByWord says a name that is made of words of the tables, and of numbers; another
// one stays whole.
func (l *Language) wordByWord(english string) string {
	words := strings.Fields(english)
	said := 0
	for i, w := range words {
		if _, err := strconv.Atoi(w); err == nil {
			continue
		}
		s, ok := l.Below[w]
		if !ok {
			s, ok = l.Table[w]
		}
		if !ok {
			return english
		}
		words[i] = bare(s)
		said++
	}
	if said == 0 {
		return english
	}
	return strings.Join(words, " ")
}

// pattern recognizes sentences that were made of a format.
type pattern struct {
	match *regexp.Regexp
	says  string
}

var verb = regexp.MustCompile(`%(\[\d+\])?(\.\d+)?[sdfgv%]`)

// compile makes patterns of the formats, those with the most letters first, so
// that the narrowest sentence is found.
func (l *Language) compile() {
	var keys []string
	for k := range l.Below {
		if len(verb.FindAllString(k, 1)) > 0 {
			keys = append(keys, k)
		}
	}
	length := func(k string) int { return len(verb.ReplaceAllString(k, "")) }
	sort.Slice(keys, func(i, j int) bool {
		if a, b := length(keys[i]), length(keys[j]); a != b {
			return a > b
		}
		return keys[i] < keys[j]
	})
	for _, k := range keys {
		l.patterns = append(l.patterns, pattern{regexp.MustCompile("^" + expression(k) + "$"), l.Below[k]})
	}
}

// expression is the regular expression of the sentences that a format makes.
func expression(format string) string {
	var b strings.Builder
	at := 0
	for _, m := range verb.FindAllStringIndex(format, -1) {
		b.WriteString(regexp.QuoteMeta(format[at:m[0]]))
		switch v := format[m[0]:m[1]]; v[len(v)-1] {
		case '%':
			b.WriteString("%")
		case 'd':
			b.WriteString(`(-?\d+)`)
		case 'f', 'g':
			b.WriteString(`(-?\d+(?:\.\d+)?)`)
		default:
			if m[1] == len(format) && strings.HasSuffix(format[:m[0]], ": ") {
				b.WriteString(`(.+)`) // a sentence of its own
			} else {
				b.WriteString(`([^:;]+?)`)
			}
		}
		at = m[1]
	}
	b.WriteString(regexp.QuoteMeta(format[at:]))
	return b.String()
}

// fill puts what was found into the places of the translation.
func (p pattern) fill(l *Language, found []string) string {
	next := 0
	return verb.ReplaceAllStringFunc(p.says, func(v string) string {
		if strings.HasSuffix(v, "%") {
			return "%"
		}
		if i := strings.IndexByte(v, ']'); i > 0 {
			next, _ = strconv.Atoi(v[2:i])
			next--
		}
		next++
		return l.Pass(found[next-1])
	})
}
