package threemf

import (
	"archive/zip"
	"bytes"
	"errors"
	"image/color"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/hpinc/go3mf"

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

// read lets another implementation of the standard read the package.
func read(t *testing.T, b []byte) *go3mf.Model {
	t.Helper()
	m := new(go3mf.Model)
	d := go3mf.NewDecoder(bytes.NewReader(b), int64(len(b)))
	d.Strict = true
	if err := d.Decode(m); err != nil {
		t.Fatal(err)
	}
	if err := m.Validate(); err != nil {
		t.Errorf("not valid: %v", err)
	}
	if err := m.ValidateCoherency(); err != nil {
		t.Errorf("meshes not sound: %v", err)
	}
	return m
}

func TestAnotherReaderGetsTheWholeScene(t *testing.T) {
	s := sample.Bench(t, 5)
	m := read(t, bytesOf(t, s))
	if m.Units != go3mf.UnitMillimeter || len(m.Build.Items) != 5 || len(m.Resources.Objects) != 5 {
		t.Fatalf("unit %v, %d items, %d objects", m.Units, len(m.Build.Items), len(m.Resources.Objects))
	}
	if len(m.Metadata) != 1 || m.Metadata[0].Name.Local != "Title" || m.Metadata[0].Value != "bench" {
		t.Errorf("metadata %v", m.Metadata)
	}
	base := m.Resources.Assets[0].(*go3mf.BaseMaterials)
	for i, o := range s.Objects {
		got, item := m.Resources.Objects[i], m.Build.Items[i]
		if got.Name != o.Name || got.PartNumber != o.ID || item.PartNumber != o.ID || item.ObjectID != got.ID {
			t.Errorf("part %d is %q, %q, %q", i, got.Name, got.PartNumber, item.PartNumber)
		}
		if got.PID != base.ID || base.Materials[got.PIndex].Color != (color.RGBA{o.Color.R, o.Color.G, o.Color.B, 255}) {
			t.Errorf("%s has colour %v", o.Name, base.Materials[got.PIndex])
		}
		want := o.Mesh()
		if len(got.Mesh.Triangles.Triangle) != len(want.Triangles) {
			t.Fatalf("%s: %d triangles, want %d", o.Name, len(got.Mesh.Triangles.Triangle), len(want.Triangles))
		}
		for k, tri := range got.Mesh.Triangles.Triangle {
			for j, v := range [3]uint32{tri.V1, tri.V2, tri.V3} {
				p, q := got.Mesh.Vertices.Vertex[v], want.Vertices[want.Triangles[k][j]]
				for axis, x := range [3]float64{float64(q.X), float64(q.Y), float64(q.Z)} {
					if off := math.Abs(float64(p[axis]) + float64(item.Transform[12+axis]) - x); off > 1e-4 {
						t.Fatalf("%s: a corner is %g mm off", o.Name, off)
					}
				}
			}
		}
	}
}

// Judges: assimp reads the package and writes STL, admesh looks at that. Parts
// come back in room coordinates and float32.
func TestAssimpAndAdmeshFindSoundParts(t *testing.T) {
	s := sample.Bench(t, 6)
	path := filepath.Join(t.TempDir(), "x.3mf")
	if err := os.WriteFile(path, bytesOf(t, s), 0o644); err != nil {
		t.Fatal(err)
	}
	a := judge.ReadAdmesh(t, judge.ToSTL(t, path))
	if !a.Sound() || a.Parts != 6 {
		t.Errorf("%+v", a)
	}
	if want := sample.Volume(s); math.Abs(a.Volume/want-1) > 1e-5 {
		t.Errorf("admesh measures %.9g mm3, want %.9g", a.Volume, want)
	}
}

func TestSameSceneSameBytesWithoutAClock(t *testing.T) {
	b := bytesOf(t, sample.Bench(t, 5))
	if !bytes.Equal(b, bytesOf(t, sample.Bench(t, 5))) {
		t.Error("two runs differ")
	}
	z, err := zip.NewReader(bytes.NewReader(b), int64(len(b)))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, f := range z.File {
		names = append(names, f.Name)
		if !f.Modified.Equal(noTime) {
			t.Errorf("%s is dated %v", f.Name, f.Modified)
		}
	}
	if got := strings.Join(names, " "); got != "[Content_Types].xml _rels/.rels 3D/3dmodel.model" {
		t.Errorf("package holds %s", got)
	}
}

// Numbers are the shortest that read back to the same float32, never with an
// exponent, and zero has no sign.
func TestFormOfNumbers(t *testing.T) {
	m := mesh.Mesh{
		Vertices:  []geom.Vec3{{X: -0.3, Y: 0, Z: 1e-7}, {X: 1234.5678, Y: 1e-3, Z: 0}, {X: 0.1, Y: 2000, Z: 0}},
		Triangles: [][3]int32{{0, 1, 2}}, FacetOf: []int32{0}, Facets: []mesh.Facet{{}},
	}
	m.Vertices[0].Y *= -1
	b := bytesOf(t, mesh.Scene{Objects: []mesh.Object{{Name: "a", ID: "b", Meshes: []mesh.Mesh{m}}}})
	z, err := zip.NewReader(bytes.NewReader(b), int64(len(b)))
	if err != nil {
		t.Fatal(err)
	}
	r, err := z.Open(modelName)
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	// the middle is 617, 1000, 0
	for _, want := range []string{
		`<vertex x="-617.3" y="-1000" z="0.0000001"/>`, `<vertex x="617.5678" y="-999.999" z="0"/>`,
		`transform="1 0 0 0 1 0 0 0 1 617 1000 0"`,
	} {
		if !strings.Contains(string(text), want) {
			t.Errorf("no %s in\n%s", want, text)
		}
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
	if err := Write(io.Discard, mesh.Scene{}); err == nil {
		t.Error("an empty scene was written")
	}
	s := sample.Bench(t, 4)
	for _, room := range []int{0, 100, 1000, len(bytesOf(t, s)) - 1} {
		if err := Write(&full{room}, s); !errors.Is(err, errFull) {
			t.Errorf("a disk with room for %d bytes: error %v", room, err)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	s := sample.Bench(b, 20)
	for b.Loop() {
		if err := Write(io.Discard, s); err != nil {
			b.Fatal(err)
		}
	}
}
