package stl

import (
	"bytes"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/hschendel/stl"

	"slabwright/mesh"
	"slabwright/model/geom"
	"slabwright/testdata/judge"
	"slabwright/testdata/sample"
)

func bytesOf(t testing.TB, s mesh.Scene) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, s); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func file(t testing.TB, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "x.stl")
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// Judge: admesh, which reads the file anew and joins triangles by their places.
func TestAdmeshFindsNothingToMend(t *testing.T) {
	s := sample.Bench(t, 7)
	a := judge.ReadAdmesh(t, file(t, bytesOf(t, s)))
	if !a.Sound() {
		t.Errorf("admesh would mend: %+v", a)
	}
	if a.Parts != 7 {
		t.Errorf("admesh counts %d parts, want 7", a.Parts)
	}
	if want := sample.Volume(s); math.Abs(a.Volume/want-1) > 1e-5 { // admesh sums in float32
		t.Errorf("admesh measures %.9g mm3, want %.9g", a.Volume, want)
	}
	for _, o := range s.Objects {
		one, _ := s.Only(o.ID)
		a := judge.ReadAdmesh(t, file(t, bytesOf(t, one)))
		if want := float64(o.Mesh().Volume()); !a.Sound() || a.Parts != 1 || math.Abs(a.Volume/want-1) > 1e-5 {
			t.Errorf("%s: %+v, want %.9g mm3", o.Name, a, want)
		}
	}
}

// The judge must be able to say no.
func TestAdmeshSeesAHoleAndAFlippedTriangle(t *testing.T) {
	s := sample.Bench(t, 2)
	m := &s.Objects[1].Meshes[0]
	m.Triangles, m.FacetOf = m.Triangles[1:], m.FacetOf[1:]
	if a := judge.ReadAdmesh(t, file(t, bytesOf(t, s))); a.Disconnected != 3 {
		t.Errorf("%d triangles with loose sides, want 3", a.Disconnected)
	}
	s = sample.Bench(t, 2)
	m = &s.Objects[1].Meshes[0]
	m.Triangles[4][0], m.Triangles[4][1] = m.Triangles[4][1], m.Triangles[4][0]
	if a := judge.ReadAdmesh(t, file(t, bytesOf(t, s))); a.Sound() {
		t.Error("a flipped triangle went unnoticed")
	}
}

// Bodies that touch in an edge are set one rounding step apart, so that readers
// that join triangles by place find each edge twice and not four times.
func TestAdmeshTellsTouchingBodiesApart(t *testing.T) {
	var faces []geom.Face
	for _, at := range []geom.Vec{geom.V(0, 0), geom.V(100, 60)} {
		faces = append(faces, geom.Prism(geom.Rect(at, at.Add(geom.V(100, 60))), 0, 45, "block").Faces()...)
	}
	m, err := mesh.FromFaces(faces)
	if err != nil {
		t.Fatal(err)
	}
	a := judge.ReadAdmesh(t, file(t, bytesOf(t, mesh.Scene{Objects: []mesh.Object{{Name: "blocks", ID: "B", Meshes: []mesh.Mesh{m}}}})))
	if !a.Sound() || a.Parts != 2 {
		t.Errorf("%+v", a)
	}
}

func TestReadBackEqualsTheScene(t *testing.T) {
	s := sample.Bench(t, 3)
	got, err := stl.ReadAll(bytes.NewReader(bytesOf(t, s)))
	if err != nil {
		t.Fatal(err)
	}
	i := 0
	for _, o := range s.Objects {
		m := o.Mesh()
		for _, tri := range m.Triangles {
			for k, v := range tri {
				p, q := m.Vertices[v], got.Triangles[i].Vertices[k]
				if q != (stl.Vec3{float32(p.X), float32(p.Y), float32(p.Z)}) {
					t.Fatalf("triangle %d of %s: %v, want %v", i, o.Name, q, p)
				}
			}
			i++
		}
	}
	if i != len(got.Triangles) {
		t.Errorf("%d triangles, want %d", len(got.Triangles), i)
	}
}

// A file that starts with "solid" is text to many readers (common practice, no
// source in the format itself, which was never standardised).
func TestHeader(t *testing.T) {
	for _, title := range []string{"", "solid", "solid top", strings.Repeat("long ", 40), "Küche"} {
		s := sample.Bench(t, 1)
		s.Title = title
		b := bytesOf(t, s)
		if bytes.HasPrefix(b, []byte("solid")) || !bytes.HasPrefix(b, []byte("binary STL, millimetres: ")) {
			t.Errorf("%q: header %q", title, b[:80])
		}
		if want := 84 + 50*len(s.Objects[0].Meshes[0].Triangles); len(b) != want {
			t.Errorf("%q: %d bytes, want %d", title, len(b), want)
		}
	}
}

func TestSameSceneSameBytes(t *testing.T) {
	if !bytes.Equal(bytesOf(t, sample.Bench(t, 5)), bytesOf(t, sample.Bench(t, 5))) {
		t.Error("two runs differ")
	}
}

// full is a disk with room for n bytes.
type full struct{ n int }

var errFull = errors.New("no space left")

func (f *full) Write(p []byte) (int, error) {
	if len(p) > f.n {
		return 0, errFull
	}
	f.n -= len(p)
	return len(p), nil
}

func TestFaultsAreReported(t *testing.T) {
	if err := Write(&bytes.Buffer{}, mesh.Scene{}); err == nil {
		t.Error("an empty scene was written")
	}
	s := sample.Bench(t, 4)
	for _, room := range []int{0, 70000} {
		if err := Write(&full{room}, s); !errors.Is(err, errFull) {
			t.Errorf("a disk with room for %d bytes: error %v", room, err)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	s := sample.Bench(b, 20)
	for b.Loop() {
		if err := Write(&bytes.Buffer{}, s); err != nil {
			b.Fatal(err)
		}
	}
}
