package musicxml_test

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"io"
	"testing"

	"github.com/google/go-cmp/cmp"

	"weft.example/picking/musicxml"
	"weft.example/picking/pickingtest"
)

// TestCompressed opens the archive by the standard's container and finds the
// very score there.
func TestCompressed(t *testing.T) {
	for _, c := range pickingtest.List()[:12] {
		var b bytes.Buffer
		if err := musicxml.EncodeCompressed(&b, c.Passage, musicxml.Options{}); err != nil {
			t.Fatal(err)
		}
		z, err := zip.NewReader(bytes.NewReader(b.Bytes()), int64(b.Len()))
		if err != nil {
			t.Fatal(err)
		}
		var container struct {
			Root []struct {
				Path string `xml:"full-path,attr"`
				Type string `xml:"media-type,attr"`
			} `xml:"rootfiles>rootfile"`
		}
		if err := xml.Unmarshal(entry(t, z, "META-INF/container.xml"), &container); err != nil || len(container.Root) != 1 ||
			container.Root[0].Type != "application/vnd.recordare.musicxml+xml" {
			t.Fatalf("%s: container %+v, %v", c.Name, container, err)
		}
		if diff := cmp.Diff(string(encoded(t, c.Passage, musicxml.Options{})), string(entry(t, z, container.Root[0].Path))); diff != "" {
			t.Errorf("%s: %s", c.Name, diff)
		}
	}
}

// TestTheTypeStandsFirst: the first entry is the media type, neither compressed
// nor followed by its size, so that it stands at byte 38 of the file; all
// entries are of one day.
func TestTheTypeStandsFirst(t *testing.T) {
	var b bytes.Buffer
	if err := musicxml.EncodeCompressed(&b, listed(t, "usual"), musicxml.Options{}); err != nil {
		t.Fatal(err)
	}
	const mediaType = "mimetypeapplication/vnd.recordare.musicxml"
	if got := string(b.Bytes()[30 : 30+len(mediaType)]); got != mediaType {
		t.Errorf("begins with %q", got)
	}
	z, err := zip.NewReader(bytes.NewReader(b.Bytes()), int64(b.Len()))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range z.File {
		if year, month, day := f.Modified.Date(); year != 1980 || month != 1 || day != 1 || len(f.Extra) > 0 {
			t.Errorf("%s is of %v, with %d bytes more", f.Name, f.Modified, len(f.Extra))
		}
	}
}

func entry(t *testing.T, z *zip.Reader, name string) []byte {
	t.Helper()
	f, err := z.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	data, err := io.ReadAll(f)
	if err != nil {
		t.Fatal(err)
	}
	return data
}
