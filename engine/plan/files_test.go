//go:build unix

package plan

import (
	"net"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"chainwale/engine/finding"
)

// onDisk writes files under a new folder and goes there.
func onDisk(t *testing.T, files map[string]string) {
	t.Helper()
	t.Chdir(t.TempDir())
	for name, src := range files {
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(src), 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

func link(t *testing.T, to, name string) {
	t.Helper()
	if err := os.Symlink(to, name); err != nil {
		t.Fatal(err)
	}
}

// naming is a plan that names a template and says no more.
func naming(template string) string { return "chainwale: 1\ntemplate: " + template + "\n" }

const whole = "chainwale: 1\nboat: { name: Sedge }\n"

// A template must lie under the root once all links are followed, whether the link
// is the file, a folder on the way, or the root itself.
func TestTemplateLinks(t *testing.T) {
	onDisk(t, map[string]string{
		"outside/class.yaml": whole, "root/classes/class.yaml": whole,
		"root/boats/direct.yaml": naming("../classes/class.yaml"),
		"root/boats/leaves.yaml": naming("leaves-link.yaml"),
		"root/boats/stays.yaml":  naming("stays-link.yaml"),
		"root/boats/folder.yaml": naming("folder/class.yaml"),
		"root/boats/within.yaml": naming("within/class.yaml"),
		"root/boats/loop.yaml":   naming("loop-link.yaml"),
		"root/boats/none.yaml":   naming("none-link.yaml"),
		"root/boats/ring.yaml":   naming("ring-link.yaml"),
	})
	link(t, "../../outside/class.yaml", "root/boats/leaves-link.yaml")
	link(t, "../classes/class.yaml", "root/boats/stays-link.yaml")
	link(t, "../../outside", "root/boats/folder")
	link(t, "../classes", "root/boats/within")
	link(t, "loop-link.yaml", "root/boats/loop-link.yaml")
	link(t, "nowhere.yaml", "root/boats/none-link.yaml")
	link(t, "ring.yaml", "root/boats/ring-link.yaml")
	link(t, "root", "root-link")
	link(t, "root/boats", "boats-link")
	const at = ":2:11 /template | the template "
	for _, c := range []struct{ plan, root, want string }{
		{"root/boats/direct.yaml", "root", ""},
		{"root/boats/direct.yaml", "", at + "root/classes/class.yaml can't be used: it lies outside the folder root/boats |"},
		{"root/boats/direct.yaml", "root/boats", at + "root/classes/class.yaml can't be used: it lies outside"},
		{"root/boats/direct.yaml", "root-link", ""},
		{"root-link/boats/direct.yaml", "root", ""},
		{"root/boats/direct.yaml", ".", ""},
		{"boats-link/within.yaml", "root", ""},
		{"root/boats/leaves.yaml", "root", at + "root/boats/leaves-link.yaml can't be used: it lies outside the folder root |"},
		{"root/boats/leaves.yaml", ".", ""},
		{"root/boats/stays.yaml", "root", ""},
		{"root/boats/stays.yaml", "", at + "root/boats/stays-link.yaml can't be used: it lies outside"},
		{"root/boats/folder.yaml", "root", at + "root/boats/folder/class.yaml can't be used: it lies outside"},
		{"root/boats/within.yaml", "root", ""},
		{"root/boats/loop.yaml", "root", at + "root/boats/loop-link.yaml can't be used: the file can't be read: too many links"},
		{"root/boats/none.yaml", "root", at + "root/boats/none-link.yaml can't be used: there is no such file"},
		{"root/boats/ring.yaml", "root", at + "root/boats/ring-link.yaml can't be used: it leads in a circle, back to root/boats/ring.yaml"},
	} {
		p, problems, err := Load(c.plan, Options{Root: c.root})
		if err != nil || (p == nil) != (c.want != "") {
			t.Errorf("%s under %q: %v, %v, %v", c.plan, c.root, p, problems, err)
		}
		var want []string
		if c.want != "" {
			want = []string{c.plan + c.want}
		}
		expectTold(t, problems, want)
	}
}

// A root that is none is said, even if no template is looked for under it.
func TestRootThatIsNone(t *testing.T) {
	onDisk(t, map[string]string{"p.yaml": whole})
	for _, root := range []string{"nowhere", "p.yaml", "p.yaml/x"} {
		_, problems, err := Load("p.yaml", Options{Root: root})
		if err != nil {
			t.Fatal(err)
		}
		expectTold(t, problems, []string{root + ":1:1  | there is no folder of this name | the folder under which"})
	}
}

// What is no ordinary file is refused before it is opened, as a plan and as a
// template: a pipe would wait for ever, a device fill the memory.
func TestNoOrdinaryFiles(t *testing.T) {
	onDisk(t, map[string]string{"p.yaml": whole})
	here, err := filepath.EvalSymlinks(mustGetwd(t))
	if err != nil {
		t.Fatal(err)
	}
	zero, err := filepath.Rel(here, "/dev/zero")
	if err != nil {
		t.Fatal(err)
	}
	if err := syscall.Mkfifo("pipe", 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir("folder", 0o700); err != nil {
		t.Fatal(err)
	}
	socket, err := net.Listen("unix", "socket")
	if err != nil {
		t.Fatal(err)
	}
	defer socket.Close()
	for name, what := range map[string]string{zero: "a device", "pipe": "a pipe", "folder": "a folder", "socket": "a socket"} {
		var own, named []finding.Problem
		if err := os.WriteFile("naming.yaml", []byte(naming(name)), 0o600); err != nil {
			t.Fatal(err)
		}
		soon(t, func() {
			_, own, _ = Load(name, Options{})
			_, named, _ = Load("naming.yaml", Options{Root: "/"})
		})
		expectTold(t, own, []string{name + ":1:1  | this is " + what + " | an ordinary file with a plan in it"})
		expectTold(t, named, []string{"naming.yaml:2:11 /template | the template " + name + " can't be used: this is " + what})
	}
}

func mustGetwd(t *testing.T) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	return dir
}

// Names that no disk takes are refused as well, each with its place.
func TestStrangeNames(t *testing.T) {
	onDisk(t, map[string]string{})
	for _, name := range []string{strings.Repeat("x", 5000), strings.Repeat("x/", 5000), ".", "..", "./../..", "a\tb", "nøwhere.yaml", "~"} {
		if err := os.WriteFile("p.yaml", []byte("chainwale: 1\ntemplate: \""+strings.ReplaceAll(name, "\t", `\t`)+"\"\n"), 0o600); err != nil {
			t.Fatal(err)
		}
		_, problems, err := Load("p.yaml", Options{})
		if err != nil || len(problems) != 1 || !strings.HasPrefix(told(problems[0]), "p.yaml:2:11 /template | the template") {
			t.Errorf("%.20q: %v, %v", name, problems, err)
		}
	}
}
