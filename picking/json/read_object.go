package json

// An objectReader reads one object. It offers the next name of the text to the
// members as the form hands them over: in the order of writing once is enough,
// in any other the form is asked again until the object ends.
type objectReader struct {
	*reader
	name  []byte // that comes next, unless the object has ended
	ended bool
	seen  uint32 // the members read
	index int    // of the member handed over, in this round
	lacks string // the first member not read by the end of this round
	twice bool   // the next name is one of a member read already
	err   error
}

func (r *reader) object(f form) error {
	if err := r.want(anObject); err != nil {
		return err
	}
	r.at++
	o := objectReader{reader: r}
	o.advance()
	for {
		before := o.seen
		o.index, o.lacks = 0, ""
		f.members(&o)
		switch {
		case o.err != nil:
			return o.err
		case o.ended && o.lacks != "":
			return refuse(o.lacks, "missing")
		case o.ended:
			r.at++
			return nil
		case o.seen == before:
			return o.stray()
		}
	}
}

// advance goes on to the next name.
func (o *objectReader) advance() {
	if o.ended = o.next() == '}'; !o.ended {
		o.name = o.quoted()
	}
}

// stray says what is wrong with a name for which no member waits.
func (o *objectReader) stray() error {
	if o.twice {
		return refuse(string(o.name), "given twice")
	}
	return refuse(short(string(o.name)), "no such field")
}

func (o *objectReader) must(name string, v value) {
	if !o.offer(name, v) && o.lacks == "" {
		o.lacks = name
	}
}

func (o *objectReader) may(name string, v value) {
	if o.offer(name, v) && o.err == nil && v.empty() {
		o.err = refuse(name, "empty; leave the field out")
	}
}

// offer reads v if name comes next, and reports whether it has been read.
func (o *objectReader) offer(name string, v value) bool {
	bit := uint32(1) << o.index
	o.index++
	here := !o.ended && o.err == nil && string(o.name) == name
	switch {
	case o.seen&bit != 0:
		o.twice = o.twice || here
		return true
	case !here:
		return false
	}
	o.seen |= bit
	if err := v.read(o.reader); err != nil {
		o.err = within(name, err)
		return true
	}
	o.advance()
	return true
}
