package words_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"sort"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"slabwright/drawing/words"
)

// literal is a string that stands in the code, with what is around it.
type literal struct {
	text string
	at   string
	node *ast.BasicLit
	path []ast.Node // from the file down to its parent
}

// literals gives the strings of the packages in some folders, without tests and
// imports.
func literals(t *testing.T, folders ...string) []literal {
	t.Helper()
	var out []literal
	fset := token.NewFileSet()
	for _, folder := range folders {
		files, err := filepath.Glob(filepath.Join(folder, "*.go"))
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: no files (%v)", folder, err)
		}
		for _, name := range files {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			file, err := parser.ParseFile(fset, name, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			var path []ast.Node
			ast.Inspect(file, func(n ast.Node) bool {
				if n == nil {
					path = path[:len(path)-1]
					return true
				}
				if _, ok := n.(*ast.ImportSpec); ok {
					return false
				}
				if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
					text, err := strconv.Unquote(l.Value)
					if err != nil {
						t.Fatal(err)
					}
					out = append(out, literal{text, fset.Position(l.Pos()).String(), l, slices.Clone(path)})
				}
				path = append(path, n)
				return true
			})
		}
	}
	return out
}

// callee names the function or method whose argument a literal is, "" when it is
// none.
func (l literal) callee() (name string, argument int) {
	call, ok := l.path[len(l.path)-1].(*ast.CallExpr)
	if !ok {
		return "", 0
	}
	switch f := call.Fun.(type) {
	case *ast.Ident:
		name = f.Name
	case *ast.SelectorExpr:
		name = f.Sel.Name
	}
	return name, slices.Index(call.Args, ast.Expr(l.node))
}

// said tells whether a literal goes through the table.
func (l literal) said() bool {
	name, argument := l.callee()
	switch name {
	case "say", "sayf", "Say", "Sayf":
		return argument == 0
	case "heads":
		return true
	}
	return false
}

// drawn are the folders whose strings reach a sheet.
var drawn = []string{"..", "../sheet", "../dim"}

// written are those of the floors below, whose words are passed on.
var written = []string{"../../model", "../../model/report", "../../model/lists", "../../model/cut", "../../model/stock", "../../model/survey", "../../model/find", "../../model/check", "../../model/revision", "../../model/bring", "../../model/calc/motion", "../../model/sit", "../../model/calc/body", "../../presets"}

func keys(t *testing.T) map[string]bool {
	out := map[string]bool{}
	for _, l := range literals(t, drawn...) {
		if l.said() && hasWords(l.text) {
			out[l.text] = true
		}
	}
	return out
}

var verb = regexp.MustCompile(`%(?:\[(\d+)\])?(?:\.\d+)?[sdfgv%]`)

// hasWords tells whether a text has letters beyond its verbs.
func hasWords(s string) bool {
	return strings.ContainsFunc(verb.ReplaceAllString(s, ""), unicode.IsLetter)
}

// Every word and sentence of the sheets has a translation.
func TestNothingIsMissing(t *testing.T) {
	for _, l := range words.All {
		if l == words.English {
			continue
		}
		var missing []string
		for k := range keys(t) {
			if _, ok := l.Table[k]; !ok {
				missing = append(missing, strconv.Quote(k))
			}
		}
		sort.Strings(missing)
		for _, k := range missing {
			t.Errorf("%s lacks %s", l.Name, k)
		}
	}
}

// A translation has the same figures and names in it as the English, and no
// sentence is kept that nobody says any more.
func TestTablesFollowTheCode(t *testing.T) {
	said, passed := keys(t), map[string]bool{}
	for _, l := range literals(t, written...) {
		passed[l.text] = true
	}
	for _, l := range words.All {
		follows(t, l.Name, l.Table, said)
		follows(t, l.Name, l.Below, passed)
	}
}

func follows(t *testing.T, language string, table map[string]string, said map[string]bool) {
	t.Helper()
	for english, other := range table {
		if a, b := verbs(t, english), verbs(t, other); !slices.Equal(a, b) {
			t.Errorf("%s: %q has %v, %q has %v", language, english, a, other, b)
		}
		if strings.TrimSpace(other) == "" || strings.HasPrefix(english, " ") != strings.HasPrefix(other, " ") {
			t.Errorf("%s: %q becomes %q", language, english, other)
		}
		if !said[english] {
			t.Errorf("%s: nobody says %q", language, english)
		}
	}
}

// verbs lists the verbs of a format in the order of what they write.
func verbs(t *testing.T, format string) []string {
	t.Helper()
	if strings.Count(verb.ReplaceAllString(format, ""), "%") > 0 && len(verb.FindAllString(format, -1)) > 0 {
		t.Errorf("%q has a verb that this test does not know", format)
	}
	by, next := map[int]string{}, 1
	for _, m := range verb.FindAllStringSubmatch(format, -1) {
		if strings.HasSuffix(m[0], "%") {
			continue
		}
		if m[1] != "" {
			next, _ = strconv.Atoi(m[1])
		}
		by[next] = strings.Replace(m[0], "["+m[1]+"]", "", 1)
		next++
	}
	var out []string
	for i := range len(by) {
		out = append(out, by[i+1])
	}
	return out
}

// No word gets onto a sheet past the table: every string with words in it is
// said, or stands where nothing is written.
func TestWordsGoThroughTheTable(t *testing.T) {
	said := 0
	for _, l := range literals(t, "..", "../sheet", "../dim") {
		switch {
		case l.said():
			said++
		case !hasWords(l.text), bareSign.MatchString(l.text), l.unwritten(), spoken[filepath.ToSlash(strings.Split(l.at, ":")[0])]:
		default:
			t.Errorf("%s: %q is not said through the table", l.at, l.text)
		}
	}
	if said < 400 {
		t.Errorf("only %d strings are said", said)
	}
}

// spoken are the files whose strings go to developers and into findings.
var spoken = map[string]bool{
	"../dump.go": true, "../overlap.go": true, "../sound.go": true, "../projection.go": true, "../dim/report.go": true}

// bareSign is what is the same in every language: letters of datums and details,
// signs of sizes, materials, the bars for checking a print.
var bareSign = regexp.MustCompile(`^(?:[A-Z]{1,26}|P%d|T%d|[ ×]*Ø(?:%s)?| [WS]|S235JR|R|[a-z]{23,26}|100 mm|\+1\.000 m|(?:%.1f)?[ %]*mm?| ?kg| ?cm|slabwright |%s-%02d|%0?\.?\d?[fd]%s|%d × Ø%s| = A|A[1-4]| x |%s x %s %s)$`)

// names are the functions whose first arguments name a group, a file or a part
// of the model, by the number of such arguments.
var names = map[string]int{
	"new": 1, "newListing": 2, "grid": 1, "long": 1, "text": 1, "put": 1, "blocks": 1, "notesBlock": 1, "cover": 1, "pictorial": 1, "plainly": 1,
	"picture": 1, "hatchKey": 1, "withNotes": 4, "more": 1, "cautions": 1, "letter": 1, "add": 1, "join": 5, "Prism": 4,
	"HasPrefix": 2, "Contains": 2, "Cut": 2, "TrimPrefix": 2, "panic": 1, "Errorf": 1, "fault": 1, "report": 1, "line": 1,
	"Sprint": 1, "steelPages": 1, "barSheet": 2, "sequel": 3, "pages": 1,
}

// unwritten tells whether a literal stands where it names something and is not
// written on a sheet.
func (l literal) unwritten() bool {
	for i := len(l.path) - 1; i >= 0; i-- {
		switch x := l.path[i].(type) {
		case *ast.KeyValueExpr:
			if id, ok := x.Key.(*ast.Ident); ok && slices.Contains([]string{"ID", "id", "Name", "name", "Rule", "Basis"}, id.Name) {
				return true
			}
			return x.Key == ast.Expr(l.node)
		case *ast.BinaryExpr:
			if x.Op == token.EQL || x.Op == token.NEQ {
				return true
			}
		case *ast.AssignStmt:
			for k, v := range x.Rhs {
				s, ok := x.Lhs[min(k, len(x.Lhs)-1)].(*ast.SelectorExpr)
				if ok && v.Pos() <= l.node.Pos() && l.node.Pos() < v.End() && (s.Sel.Name == "id" || s.Sel.Name == "Name") {
					return true
				}
			}
		case *ast.ValueSpec:
			return x.Type != nil // a word of the model
		case *ast.CaseClause:
			return slices.Contains(x.List, ast.Expr(l.node))
		case *ast.IndexExpr:
			return true
		case *ast.CallExpr:
			name, first := "", -1
			switch f := x.Fun.(type) {
			case *ast.Ident:
				name = f.Name
			case *ast.SelectorExpr:
				name = f.Sel.Name
			}
			for k, a := range x.Args {
				if a.Pos() <= l.node.Pos() && l.node.Pos() < a.End() {
					first = k
				}
			}
			if name != "Sprintf" {
				return first < names[name]
			}
		case *ast.FuncDecl:
			return false
		}
	}
	return false
}
