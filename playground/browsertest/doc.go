// Package browsertest drives the page of playground in a real browser. It is a
// module of its own, so that nobody who uses the library takes chromedp on.
//
//	cd playground/browsertest && go test ./...
//
// It wants Chromium, and for the test of accessibility the file axe.min.js of
// axe-core, whose path stands in the environment variable AXE. What is missing
// is skipped loudly; where CI_STRICT is set, that is a failure.
package browsertest
