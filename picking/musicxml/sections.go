package musicxml

import "bytes"

// A section is bars from and to, counted from 0, that stand one after another.
type section struct {
	from, to int
	twice    bool // the next bars, as many, are written alike and do not stand
	last     bool // no bars follow
}

// sections divides the passage at its repeats.
func (s *score) sections() (list []section) {
	done := 0
	for i := 0; i < len(s.Bars); i++ {
		n := s.SecondPlaying(i)
		if n == 0 || i-n < done || !s.alike(i-n, i, n) {
			continue
		}
		if done < i-n {
			list = append(list, section{from: done, to: i - n})
		}
		list = append(list, section{from: i - n, to: i, twice: true})
		done = i + n
		i = done - 1
	}
	if done < len(s.Bars) {
		list = append(list, section{from: done, to: len(s.Bars)})
	}
	if n := len(list); n > 0 {
		list[n-1].last = true
	}
	return list
}

// alike reports whether n bars from a on are written as those from b on.
func (s *score) alike(a, b, n int) bool {
	scratch := *s
	scratch.out = nil
	for k := range n {
		scratch.out = scratch.out[:0]
		scratch.body(a+k, false)
		half := len(scratch.out)
		scratch.body(b+k, false)
		if !bytes.Equal(scratch.out[:half], scratch.out[half:]) {
			return false
		}
	}
	return true
}
