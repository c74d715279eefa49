package words_test

import (
	"encoding/xml"
	"fmt"
	"io"
	"slices"
	"strings"
)

// A readPage is what a strict XML reader takes from a page.
type readPage struct {
	title string // of the head
	lang  string
	text  string // as plain words
	ids   map[string]bool
	links []string
}

// holds says which elements each element of a page may hold; of HTML only what
// the pages use.
var holds = map[string][]string{
	"": {"html"}, "html": {"head", "body"}, "head": {"meta", "title", "style"}, "body": {"main"},
	"main": {"h1", "h2", "h3", "p", "ul"}, "ul": {"li"}, "li": {"a"}, "p": {"a"},
}

// attributes says which attributes an element may have.
var attributes = map[string][]string{
	"html": {"lang"}, "meta": {"charset", "name", "content"}, "h1": {"dir"}, "h3": {"id"}, "a": {"href"},
}

// readPageText reads a page or says what keeps it from being one.
func readPageText(source string) (*readPage, error) {
	if !strings.HasPrefix(source, "<!DOCTYPE html>\n") {
		return nil, fmt.Errorf("no document type")
	}
	d := xml.NewDecoder(strings.NewReader(source))
	p := &readPage{ids: map[string]bool{}}
	path := []string{""}
	for {
		token, err := d.Token()
		if err == io.EOF {
			return p, p.linksFault()
		}
		if err != nil {
			return nil, err
		}
		switch token := token.(type) {
		case xml.StartElement:
			if !slices.Contains(holds[path[len(path)-1]], token.Name.Local) {
				return nil, fmt.Errorf("%s in %s", token.Name.Local, path[len(path)-1])
			}
			path = append(path, token.Name.Local)
			if err := p.open(token); err != nil {
				return nil, err
			}
		case xml.EndElement:
			if slices.Contains([]string{"h1", "h2", "h3", "p", "li"}, token.Name.Local) {
				p.text += "\n"
			}
			path = path[:len(path)-1]
		case xml.CharData:
			if err := p.chars(path[len(path)-1], string(token)); err != nil {
				return nil, err
			}
		}
	}
}

func (p *readPage) open(element xml.StartElement) error {
	for _, a := range element.Attr {
		if !slices.Contains(attributes[element.Name.Local], a.Name.Local) {
			return fmt.Errorf("attribute %s of %s", a.Name.Local, element.Name.Local)
		}
		switch a.Name.Local {
		case "lang":
			p.lang = a.Value
		case "id":
			if p.ids[a.Value] {
				return fmt.Errorf("id %s twice", a.Value)
			}
			p.ids[a.Value] = true
		case "href":
			p.links = append(p.links, a.Value)
		}
	}
	if name := element.Name.Local; name == "h1" && p.text != "" || name == "h2" || name == "h3" {
		p.text += "\n"
	}
	return nil
}

func (p *readPage) chars(in, text string) error {
	switch in {
	case "h1", "h2", "h3", "p", "li", "a":
		p.text += text
	case "title":
		p.title += text
	case "style":
	default:
		if strings.TrimSpace(text) != "" {
			return fmt.Errorf("text in %s: %q", in, text)
		}
	}
	return nil
}

// linksFault wants every link to lead to a heading of the page.
func (p *readPage) linksFault() error {
	for _, link := range p.links {
		if !strings.HasPrefix(link, "#") || !p.ids[link[1:]] {
			return fmt.Errorf("the link %s leads nowhere", link)
		}
	}
	return nil
}
