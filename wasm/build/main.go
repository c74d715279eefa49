// Build writes the package for JavaScript into a folder and prints how large its
// programs are. It fails if one is larger than it may be.
//
//	go run ./wasm/build -o out/weft
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"strings"

	"weft.example/wasm/bundle"
)

func main() {
	dir := flag.String("o", "out/weft", "write to `folder`")
	flag.Parse()
	if flag.NArg() > 0 {
		fail("stray argument " + flag.Arg(0) + "; the folder goes after -o")
	}
	root, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "weft.example").Output()
	if err != nil {
		fail("run it inside the module: " + err.Error())
	}
	sizes, err := bundle.Write(strings.TrimSpace(string(root)), *dir)
	if err != nil {
		fail(err.Error())
	}
	over := false
	for _, size := range sizes {
		fmt.Println(size)
		over = over || size.Over()
	}
	if over {
		fail("larger than it may be")
	}
}

func fail(reason string) {
	fmt.Fprintln(os.Stderr, "build: "+reason)
	os.Exit(1)
}
