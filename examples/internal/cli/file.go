package cli

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
)

// WriteFile puts content into the file of that name, all of it or nothing, also
// when an interrupt comes, which is then [ErrInterrupted]. Other errors are
// located in the name, as the text of a flag.
func WriteFile(flag, name string, content []byte) error {
	return writeFile(flag, name, func(w io.Writer) error {
		_, err := w.Write(content)
		return err
	})
}

// writeFile puts what write writes into the file of that name, all of it or
// nothing: a temporary file beside it takes its place once it is complete.
func writeFile(flag, name string, write func(io.Writer) error) error {
	p := &part{flag: flag, name: name}
	out := bufio.NewWriterSize(p, 1<<16)
	err := write(out)
	if err == nil {
		err = out.Flush()
	}
	if err == nil && p.file == nil { // nothing was written, which is a file too
		_, err = p.Write(nil)
	}
	return p.settle(err)
}

// A part is a file in the making. It is there from the first byte on, so that
// what is refused before leaves nothing behind.
type part struct {
	flag, name, target string
	file               *os.File
	interrupted        context.Context
	release            func()
}

func (p *part) Write(b []byte) (int, error) {
	if p.file == nil {
		if err := p.open(); err != nil {
			return 0, fileError(p.flag, p.name, err)
		}
	}
	if p.interrupted.Err() != nil {
		return 0, ErrInterrupted
	}
	n, err := p.file.Write(b)
	if err != nil {
		err = fileError(p.flag, p.name, err)
	}
	return n, err
}

// open makes the temporary file, and takes interrupts from there on.
func (p *part) open() error {
	target, mode, err := resolve(p.name)
	if err != nil {
		return err
	}
	if p.file, err = create(target, mode); err != nil {
		p.file = nil
		return err
	}
	p.target = target
	p.interrupted, p.release = signal.NotifyContext(context.Background(), os.Interrupt)
	return nil
}

// settle puts a complete file in its place and takes any other away.
func (p *part) settle(err error) error {
	if p.file == nil {
		return err
	}
	defer p.release()
	if closed := p.file.Close(); err == nil && closed != nil {
		err = fileError(p.flag, p.name, closed)
	}
	if err == nil && p.interrupted.Err() != nil {
		err = ErrInterrupted
	}
	if err == nil {
		if err = os.Rename(p.file.Name(), p.target); err == nil {
			return nil
		}
		err = fileError(p.flag, p.name, err)
	}
	os.Remove(p.file.Name())
	return err
}

// resolve returns the file behind name, following links, which would else be
// replaced themselves, and the permissions it has or is to have. It refuses
// what cannot be written to.
func resolve(name string) (string, fs.FileMode, error) {
	if name == "" {
		return "", 0, errors.New("no name")
	}
	target := name
	if real, err := filepath.EvalSymlinks(name); err == nil {
		target = real
	}
	info, err := os.Stat(target)
	if err != nil {
		return target, 0o666, nil
	}
	if !info.Mode().IsRegular() {
		return target, 0, errors.New("not a plain file")
	}
	old, err := os.OpenFile(target, os.O_WRONLY, 0)
	if err == nil {
		err = old.Close()
	}
	return target, info.Mode().Perm(), err
}

// create makes a temporary file in the target's directory.
func create(target string, mode fs.FileMode) (*os.File, error) {
	const tries = 100
	for i := 1; ; i++ {
		part, err := os.OpenFile(fmt.Sprintf("%s.%d.part", target, i), os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
		if !errors.Is(err, fs.ErrExist) || i == tries {
			return part, err
		}
	}
}

// fileError says what is wrong with a file, without the name of the temporary
// one, which the user never gave.
func fileError(flag, name string, err error) error {
	return Impossible(flag, name, Cause(err).Error(), "choose a file that can be written")
}

// Cause returns what is wrong with a file or folder, without its name.
func Cause(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}
