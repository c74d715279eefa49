package svg_test

import (
	"fmt"
	"strings"

	"weft.example/picking"
	"weft.example/picking/svg"
)

// The pages of a sheet in large print, each a drawing to put into a document.
func ExamplePages() {
	song := picking.MustParseProgression("Am=x02210 | G=320003 | Dm=xx0231 | E=022100")
	figures := picking.Figures{picking.MustParseFigure("5 3 2 1 2 3")}
	part, err := picking.Arrange(song, figures, picking.Setting{Title: "Evening Water", Meter: picking.SixEight})
	if err != nil {
		fmt.Println(err)
		return
	}
	pages, err := svg.Pages(part, svg.Options{Size: 18, Landscape: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, page := range pages {
		_, rest, _ := strings.Cut(string(page), "<title>")
		title, _, _ := strings.Cut(rest, "</title>")
		fmt.Println(title)
	}
	// Output:
	// Evening Water, page 1 of 3
	// Evening Water, page 2 of 3
	// Evening Water, page 3 of 3
}
