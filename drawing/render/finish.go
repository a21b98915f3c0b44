package render

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf16"

	"slabwright/drawing"
)

// The document that canvas writes carries the time of day, in its information
// and in each embedded font, and has no page labels. finish takes it apart into
// its objects, mends and packs those, and puts it together again.

var (
	reKids = regexp.MustCompile(`/Kids\[([0-9R ]*)\]`)
	reRef  = regexp.MustCompile(`(\d+) 0 R`)
)

// Numbers that canvas gives to the objects of each document.
const (
	catalogObject = 1
	infoObject    = 2
	pagesObject   = 3
)

var errLayout = errors.New("the document is not laid out as expected")

// finish mends a document and adds bookmarks and page labels.
func finish(doc []byte, sheets []drawing.Sheet, meta Meta) ([]byte, error) {
	objects, head, err := split(doc)
	if err != nil {
		return nil, err
	}
	if err := each(objects, mend); err != nil {
		return nil, err
	}
	kids := reKids.FindSubmatch(objects[pagesObject-1])
	if kids == nil {
		return nil, errLayout
	}
	pages := reRef.FindAllSubmatch(kids[1], -1)
	if len(pages) != len(sheets) {
		return nil, errLayout
	}
	root := len(objects) + 1
	var labels strings.Builder
	for i, s := range sheets {
		n := root + 1 + i
		var b strings.Builder
		fmt.Fprintf(&b, "<</Title%s/Parent %d 0 R/Dest[%s/Fit]", textString(bookmark(s)), root, pages[i][0])
		if i > 0 {
			fmt.Fprintf(&b, "/Prev %d 0 R", n-1)
		}
		if i < len(sheets)-1 {
			fmt.Fprintf(&b, "/Next %d 0 R", n+1)
		}
		objects = append(objects, []byte(b.String()+">>"))
		fmt.Fprintf(&labels, "%d<</P%s>>", i, textString(s.Name))
	}
	outline := fmt.Sprintf("<</Type/Outlines/First %d 0 R/Last %d 0 R/Count %d>>", root+1, root+len(sheets), len(sheets))
	objects = append(objects[:root-1], append([][]byte{[]byte(outline)}, objects[root-1:]...)...)
	objects[catalogObject-1] = fmt.Appendf(nil, "<</Type/Catalog/Pages %d 0 R/Outlines %d 0 R/PageMode/UseOutlines"+
		"/PageLabels<</Nums[%s]>>/ViewerPreferences<</PrintScaling/None/DisplayDocTitle true>>>>", pagesObject, root, labels.String())
	objects[infoObject-1] = info(meta)
	return join(head, objects), nil
}

// bookmark names a sheet in the outline.
func bookmark(s drawing.Sheet) string {
	if s.Number > 0 {
		return strconv.Itoa(s.Number) + "  " + s.Title
	}
	return s.Title
}

func info(meta Meta) []byte {
	b := []byte("<<")
	for _, f := range [][2]string{
		{"Title", meta.Title}, {"Subject", meta.Subject}, {"Author", meta.Author}, {"Creator", meta.Creator},
	} {
		if f[1] != "" {
			b = fmt.Appendf(b, "/%s%s", f[0], textString(f[1]))
		}
	}
	return append(b, ">>"...)
}

// textString writes a text as hexadecimal UTF-16, which needs no escapes.
func textString(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	return b.String() + ">"
}
