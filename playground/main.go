// Command playground builds the page that shows the library in a browser, and
// serves it or writes it as a static site:
//
//	go run ./playground              serves it on 127.0.0.1:8080
//	go run ./playground -addr :9000  serves it elsewhere
//	go run ./playground -o DIR       writes it, for any file server and any path
//
// It needs the go command, which makes the WebAssembly file.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/signal"
	"time"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx, os.Args[1:], os.Stdout); err != nil && !errors.Is(err, flag.ErrHelp) {
		fmt.Fprintln(os.Stderr, "playground:", err)
		os.Exit(1)
	}
}

// run does what the arguments ask until the context ends.
func run(ctx context.Context, args []string, out io.Writer) error {
	flags := flag.NewFlagSet("playground", flag.ContinueOnError)
	addr := flags.String("addr", "127.0.0.1:8080", "where to serve the page; port 0 takes a free one")
	dir := flags.String("o", "", "write the static site into this `directory` and serve nothing")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("%q is not understood; there are only flags", flags.Arg(0))
	}
	s, err := build(ctx)
	if err != nil {
		return err
	}
	if *dir == "" {
		return serve(ctx, s, *addr, out)
	}
	if err := s.write(*dir); err != nil {
		return err
	}
	fmt.Fprintf(out, "%d files, %.1f MB, in %s\n", len(s), float64(s.size())/1e6, *dir)
	return nil
}

// serve serves a site until the context ends.
func serve(ctx context.Context, s site, addr string, out io.Writer) error {
	listener, err := net.Listen("tcp", addr)
	if err != nil {
		return err
	}
	server := &http.Server{Handler: s, ReadHeaderTimeout: 10 * time.Second}
	context.AfterFunc(ctx, func() { server.Close() })
	fmt.Fprintf(out, "http://%s/\n", listener.Addr())
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}
