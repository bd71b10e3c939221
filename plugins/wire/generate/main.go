// Generate makes the Go code of contract.proto in the folder that it is given. It is
// run from plugins/wire; protoc must be on the machine, its two Go generators are
// tools of go.mod and come with the module.
package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "generate: name the folder in which the code is to stand")
		os.Exit(2)
	}
	if err := generate(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "generate:", err)
		os.Exit(1)
	}
}

func generate(into string) error {
	args := []string{"--proto_path=.."}
	for _, name := range []string{"go", "go-grpc"} {
		program, err := tool("protoc-gen-" + name)
		if err != nil {
			return err
		}
		args = append(args, "--plugin=protoc-gen-"+name+"="+program, "--"+name+"_out="+into, "--"+name+"_opt=module=chainwale/plugins/wire")
	}
	if err := run("protoc", append(args, "contract.proto")...); err != nil {
		return err
	}
	return anyProtoc(into)
}

// tool builds a tool of go.mod, if it isn't built, and gives its path.
func tool(name string) (string, error) {
	out, err := exec.Command("go", "tool", "-n", name).Output()
	return strings.TrimSpace(string(out)), err
}

func run(name string, args ...string) error {
	c := exec.Command(name, args...)
	c.Stdout, c.Stderr = os.Stderr, os.Stderr
	return c.Run()
}

// anyProtoc takes out the comment that names the release of protoc: the code below
// it is the same whichever made it.
func anyProtoc(dir string) error {
	files, err := filepath.Glob(filepath.Join(dir, "*.pb.go"))
	if err != nil {
		return err
	}
	for _, name := range files {
		src, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		var kept []string
		for _, line := range strings.SplitAfter(string(src), "\n") {
			if !strings.HasPrefix(line, "// \tprotoc ") && !strings.HasPrefix(line, "// - protoc ") {
				kept = append(kept, line)
			}
		}
		if err := os.WriteFile(name, []byte(strings.Join(kept, "")), 0o644); err != nil {
			return err
		}
	}
	return nil
}
