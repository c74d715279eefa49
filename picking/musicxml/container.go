package musicxml

import (
	"archive/zip"
	"bytes"
	"hash/crc32"
	"io"

	"weft.example/picking"
)

// The media types of the standard.
const (
	compressedType = "application/vnd.recordare.musicxml"
	plainType      = compressedType + "+xml"
)

const (
	scoreName = "score.musicxml"
	container = `<?xml version="1.0" encoding="UTF-8"?>
<container>
  <rootfiles>
    <rootfile full-path="` + scoreName + `" media-type="` + plainType + `"/>
  </rootfiles>
</container>
`
)

// EncodeCompressed writes p to w as a compressed MusicXML file (.mxl): a zip
// archive of a container and the score that [Encode] writes. Its entries carry
// the first day that a zip archive knows, in 1980. Errors are those of
// [Encode]; it holds the archive back until all is written.
func EncodeCompressed(w io.Writer, p picking.Passage, o Options) error {
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	if err := store(z, "mimetype", compressedType); err != nil {
		return err
	}
	if err := store(z, "META-INF/container.xml", container); err != nil {
		return err
	}
	//lint:ignore SA1019 Modified would add a time stamp of its own
	score, err := z.CreateHeader(&zip.FileHeader{Name: scoreName, Method: zip.Deflate, ModifiedDate: firstDay})
	if err != nil {
		return err
	}
	if err := Encode(score, p, o); err != nil {
		return err
	}
	if err := z.Close(); err != nil {
		return err
	}
	n, err := w.Write(b.Bytes())
	if err == nil && n < b.Len() {
		err = io.ErrShortWrite
	}
	return err
}

// firstDay is 1 January 1980 in the count of MS-DOS.
const firstDay = 1<<5 | 1

// store adds an entry as it is, its size in front of it, so that the first
// entry tells the type of the file at a fixed place.
func store(z *zip.Writer, name, text string) error {
	//lint:ignore SA1019 CreateRaw does not look at Modified
	entry, err := z.CreateRaw(&zip.FileHeader{Name: name, Method: zip.Store, ModifiedDate: firstDay,
		CRC32: crc32.ChecksumIEEE([]byte(text)), CompressedSize64: uint64(len(text)), UncompressedSize64: uint64(len(text))})
	if err != nil {
		return err
	}
	_, err = io.WriteString(entry, text)
	return err
}
