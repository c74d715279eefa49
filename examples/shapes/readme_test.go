package main

import (
	"testing"

	"weft.example/examples/internal/clitest"
)

func TestTheReadmeIsCurrent(t *testing.T) { clitest.Main(run).CheckReadme(t, "shapes") }
