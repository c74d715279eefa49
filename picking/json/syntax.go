package json

import (
	"strconv"
	"strings"
)

// maxDepth is how many lists and objects may stand within each other.
const maxDepth = 10000

// A checker finds the first place at which a text is not JSON (RFC 8259). It
// keeps what is open in a list rather than on the stack, which a browser keeps
// small. Its reasons are those of encoding/json.
type checker struct {
	text   []byte
	at     int    // of the fault, once there is a reason
	open   []byte // the signs that began what has not ended
	reason string
}

func (c *checker) check() {
	for more := true; more && c.value(); {
		more = c.after()
	}
}

// refuse keeps the first reason. The end of the text counts as a space.
func (c *checker) refuse(context string) bool {
	if c.reason == "" {
		c.reason = "invalid character " + quotedByte(c.byte()) + " " + context
	}
	return false
}

func quotedByte(b byte) string {
	switch b {
	case '\'':
		return `'\''`
	case '"':
		return `'"'`
	}
	quoted := strconv.Quote(string(rune(b)))
	return "'" + quoted[1:len(quoted)-1] + "'"
}

func (c *checker) byte() byte {
	if c.at < len(c.text) {
		return c.text[c.at]
	}
	return ' '
}

// sign passes over spaces and returns the next byte, refusing the end.
func (c *checker) sign() byte {
	for ; c.at < len(c.text); c.at++ {
		if b := c.text[c.at]; strings.IndexByte(" \t\r\n", b) < 0 {
			return b
		}
	}
	c.cutShort()
	return 0
}

func (c *checker) cutShort() bool {
	if c.reason == "" {
		c.reason = "unexpected end of JSON input"
	}
	return false
}

// value passes over a number, a text or a word, or over the beginnings of lists
// and objects up to such a one or to the end of an empty one.
func (c *checker) value() bool {
	for {
		switch b := c.sign(); b {
		case '{', '[':
			if more := c.begin(b); !more {
				return c.reason == ""
			}
		case '"':
			return c.quoted()
		case 't':
			return c.word("true")
		case 'f':
			return c.word("false")
		case 'n':
			return c.word("null")
		default:
			return c.number(b)
		}
	}
}

// begin reports whether a value comes next: not if the list or object is empty.
func (c *checker) begin(sign byte) bool {
	if c.open = append(c.open, sign); len(c.open) > maxDepth {
		return c.refuse("exceeded max depth")
	}
	c.at++
	if sign == '[' {
		return c.sign() != ']'
	}
	return c.sign() != '}' && c.name()
}

// after passes over what follows a value, and reports whether another comes.
func (c *checker) after() bool {
	for len(c.open) > 0 {
		last := len(c.open) - 1
		end, context := byte(']'), "after array element"
		if c.open[last] == '{' {
			end, context = '}', "after object key:value pair"
		}
		switch c.sign() {
		case ',':
			c.at++
			return end == ']' || c.name()
		case end:
			c.at++
			c.open = c.open[:last]
		default:
			return c.refuse(context)
		}
	}
	for ; c.at < len(c.text); c.at++ {
		if strings.IndexByte(" \t\r\n", c.text[c.at]) < 0 {
			return c.refuse("after top-level value")
		}
	}
	return false
}

// name passes over the name of a member and its colon.
func (c *checker) name() bool {
	if c.sign() != '"' {
		return c.refuse("looking for beginning of object key string")
	}
	if !c.quoted() {
		return false
	}
	if c.sign() != ':' {
		return c.refuse("after object key")
	}
	c.at++
	return true
}

func (c *checker) word(word string) bool {
	for _, want := range []byte(word) {
		if c.byte() != want {
			return c.refuse("in literal " + word + " (expecting '" + string(want) + "')")
		}
		c.at++
	}
	return true
}

func (c *checker) number(first byte) bool {
	if first != '-' && !isDigit(first) {
		return c.refuse("looking for beginning of value")
	}
	if first == '-' {
		c.at++
	}
	if c.byte() == '0' {
		c.at++
	} else if !c.digits("in numeric literal") {
		return false
	}
	if c.byte() == '.' {
		c.at++
		if !c.digits("after decimal point in numeric literal") {
			return false
		}
	}
	if b := c.byte(); b != 'e' && b != 'E' {
		return true
	}
	c.at++
	if b := c.byte(); b == '+' || b == '-' {
		c.at++
	}
	return c.digits("in exponent of numeric literal")
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }

// digits passes over digits, refusing none.
func (c *checker) digits(context string) bool {
	if !isDigit(c.byte()) {
		return c.refuse(context)
	}
	for isDigit(c.byte()) {
		c.at++
	}
	return true
}

func (c *checker) quoted() bool {
	for c.at++; c.at < len(c.text); c.at++ {
		switch b := c.text[c.at]; {
		case b == '"':
			c.at++
			return true
		case b == '\\' && !c.escape():
			return false
		case b < ' ':
			return c.refuse("in string literal")
		}
	}
	return c.cutShort()
}

// escape goes on to the last byte of an escape.
func (c *checker) escape() bool {
	c.at++
	if c.byte() != 'u' {
		return strings.IndexByte(escapes, c.byte()) >= 0 || c.refuse("in string escape code")
	}
	for range 4 {
		c.at++
		if strings.IndexByte("0123456789abcdefABCDEF", c.byte()) < 0 {
			return c.refuse(`in \u hexadecimal character escape`)
		}
	}
	return true
}
