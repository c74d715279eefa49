package words

// A document is what the plain text and the page both say, block by block.
type document []block

type block struct {
	kind kind
	text string
	bar  int // the number of the bar that a heading begins, or 0
	link link
}

// A kind says what a block is. Items that follow each other are one list.
type kind uint8

const (
	title kind = iota
	heading
	subheading
	sentence
	item
)

// A link leads from those words of a text that name bars to their heading.
type link struct {
	words string
	bar   int
}

func (d *document) add(k kind, text string) { *d = append(*d, block{kind: k, text: text}) }

// items adds a list, leaving out what is empty.
func (d *document) items(texts ...string) {
	for _, text := range texts {
		if text != "" {
			d.add(item, text)
		}
	}
}
