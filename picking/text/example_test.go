package text_test

import (
	"fmt"
	"os"

	"weft.example/picking"
	"weft.example/picking/text"
)

func ExampleEncode() {
	song := picking.MustParseProgression("Am=x02210 | G=320003")
	figures := picking.Figures{picking.MustParseFigure("5 3 2 1 2 3")}
	part, err := picking.Arrange(song, figures, picking.Setting{Meter: picking.SixEight, Tempo: 66})
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := text.Encode(os.Stdout, part, text.Options{}); err != nil {
		fmt.Println(err)
	}
	// Output:
	// meter   6/8, 66 dotted quarter notes a minute
	// tuning  standard, E2 A2 D3 G3 B3 E4 (string 6 to string 1)
	// hand    right-handed
	// stroke  toward the next string
	// fit     contour: the figure keeps its rise and fall over the strings
	// form    a loop: the end leads back to bar 1
	//
	// bar     1                   2
	// chord   Am x02210           G 320003
	// count   1  2  3  4  5  6    1  2  3  4  5  6
	// stroke  D  D  D  U  U  U    D  D  D  U  U  U
	// 1 E   |----------0--------|----------3--------|
	// 2 B   |-------1-----1-----|-------0-----0-----|
	// 3 G   |----2-----------2--|----0-----------0--|
	// 4 D   |-------------------|-------------------|
	// 5 A   |-0-----------------|-------------------|
	// 6 E   |-------------------|-3-----------------|
	// start   5                   6
	//
	// chord   with its shape, from string 6 to string 1: the fret, 0 for open, x for a
	//         string that does not sound
	// count   a number counts an eighth note
	// stroke  D down, toward string 1; U up, toward string 6
	// 1-6     the strings; a number is the fret of a note, which rings on until its
	//         string is plucked again or let go
	// start   the number of the start string, under its first note; it carries the
	//         chord's root
	//
	// travel  the pick moves 10 string spacings (108.0 mm) between strokes, round the
	//         loop too
}
