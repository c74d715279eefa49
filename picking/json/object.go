package json

// An object is a form as a value.
type object struct{ form }

func (v object) write(w *writer)      { w.object(v.form) }
func (v object) read(r *reader) error { return r.object(v.form) }
func (v object) empty() bool          { return false }

// pointerTo[F] is a pointer to F that is a form.
type pointerTo[F any] interface {
	*F
	form
}

// An optionalObject is one that may be left out.
type optionalObject[F any, P pointerTo[F]] struct{ at *P }

func optional[F any, P pointerTo[F]](at *P) value { return optionalObject[F, P]{at} }

func (v optionalObject[F, P]) write(w *writer) { w.object(*v.at) }
func (v optionalObject[F, P]) empty() bool     { return *v.at == nil }
func (v optionalObject[F, P]) read(r *reader) error {
	*v.at = new(F)
	return r.object(*v.at)
}

type objectList[F any, P pointerTo[F]] struct{ at *[]F }

func objects[F any, P pointerTo[F]](at *[]F) value { return objectList[F, P]{at} }

func (v objectList[F, P]) write(w *writer) {
	w.list(len(*v.at), func(i int) { w.object(P(&(*v.at)[i])) })
}

func (v objectList[F, P]) empty() bool { return *v.at == nil }

func (v objectList[F, P]) read(r *reader) error {
	return r.list(func(i int) error {
		*v.at = append(*v.at, *new(F))
		return r.object(P(&(*v.at)[i]))
	})
}
