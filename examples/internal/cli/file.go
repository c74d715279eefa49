package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// writeFile puts content into the file of that name, all of it or nothing: a
// temporary file beside it takes its place once it is complete. Errors are
// located in the name.
func writeFile(name string, content []byte) error {
	target, mode, err := resolve(name)
	if err != nil {
		return fileError(name, err)
	}
	part, err := create(target, mode)
	if err != nil {
		return fileError(name, err)
	}
	_, err = part.Write(content)
	if closed := part.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Rename(part.Name(), target)
	}
	if err != nil {
		os.Remove(part.Name())
		return fileError(name, err)
	}
	return nil
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
func fileError(name string, err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		err = path.Err
	case errors.As(err, &link):
		err = link.Err
	}
	return Impossible("o", name, err.Error(), "choose a file that can be written")
}
