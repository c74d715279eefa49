package box_test

import (
	"fmt"
	"os"

	"weft.example/fretboard"
	"weft.example/voicing"
	"weft.example/voicing/box"
)

// shaped returns the box of a chord held as a shape, on a guitar.
func shaped(chord, shape string) box.Box {
	c, err := voicing.ParseChord(chord)
	if err != nil {
		panic(err)
	}
	sh, err := voicing.ParseShape(shape)
	if err != nil {
		panic(err)
	}
	v, err := voicing.New(fretboard.Instrument{}, c, sh)
	if err != nil {
		panic(err)
	}
	return box.Of(v)
}

func ExampleBox_Columns() {
	b := shaped("Am", "577555")
	first, rows := b.Window()
	fmt.Printf("%d rows from fret %d\n", rows, first)
	for i, c := range b.Columns() {
		fmt.Printf("column %d: string %d, row %d, %s\n", i, c.String, c.Row, c.Finger)
	}
	for _, barre := range b.Barres() {
		fmt.Printf("%s in row %d, columns %d to %d\n", barre.Finger, barre.Row, barre.Left, barre.Right)
	}
	// Output:
	// 4 rows from fret 5
	// column 0: string 6, row 1, index
	// column 1: string 5, row 3, ring
	// column 2: string 4, row 3, little
	// column 3: string 3, row 1, index
	// column 4: string 2, row 1, index
	// column 5: string 1, row 1, index
	// index in row 1, columns 0 to 5
}

func ExampleBox_Text() {
	fmt.Print(shaped("Am", "577555").Text())
	// Output:
	//    Am
	//
	//    +--+--+--+--+--+
	//  5 1--------1--1--1
	//    +--+--+--+--+--+
	//    |  |  |  |  |  |
	//    +--+--+--+--+--+
	//    |  3  4  |  |  |
	//    +--+--+--+--+--+
	//    |  |  |  |  |  |
	//    +--+--+--+--+--+
	//    6  5  4  3  2  1
	//    ^
}

func ExampleBox_Words() {
	for _, sentence := range shaped("C", "x32010").Words() {
		fmt.Println(sentence)
	}
	// Output:
	// C major.
	// String 6 muted.
	// String 5, fret 3, ring finger: start here.
	// String 4, fret 2, middle finger.
	// String 3 open.
	// String 2, fret 1, index finger.
	// String 1 open.
}

func ExampleEncode() {
	boxes := []box.Box{shaped("C", "x32010"), shaped("Am", "577555"), shaped("Em", "022000")}
	if err := box.Encode(os.Stdout, boxes, box.Options{Width: 64}); err != nil {
		fmt.Println(err)
	}
	// Output:
	//    C                    Am                   Em
	//    x        0     0                          0        0  0  0
	//    ================     +--+--+--+--+--+     ================
	//    |  |  |  |  1  |   5 1--------1--1--1     |  |  |  |  |  |
	//    +--+--+--+--+--+     +--+--+--+--+--+     +--+--+--+--+--+
	//    |  |  2  |  |  |     |  |  |  |  |  |     |  1  2  |  |  |
	//    +--+--+--+--+--+     +--+--+--+--+--+     +--+--+--+--+--+
	//    |  3  |  |  |  |     |  3  4  |  |  |     |  |  |  |  |  |
	//    +--+--+--+--+--+     +--+--+--+--+--+     +--+--+--+--+--+
	//    |  |  |  |  |  |     |  |  |  |  |  |     |  |  |  |  |  |
	//    +--+--+--+--+--+     +--+--+--+--+--+     +--+--+--+--+--+
	//    6  5  4  3  2  1     6  5  4  3  2  1     6  5  4  3  2  1
	//       ^                 ^                    ^
	//
	// x     muted
	// 0     open
	// ===   the nut
	// left  the number on the left is the fret of the first row,
	//       counted from the nut
	// 1-4   the finger that stops the string: 1 index, 2 middle, 3
	//       ring, 4 little
	// 1--1  one finger across several strings
	// below the numbers of the strings
	// ^     the start string, on which a figure begins
}
