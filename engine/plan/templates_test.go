package plan

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"chainwale/engine/finding"
)

// loaded is what became of a plan.
type loaded struct {
	plan     *Plan
	problems []finding.Problem
	err      error
}

func loadFrom(name string, files map[string]string, kept *Templates) loaded {
	p, problems, err := Load(name, Options{Open: shelf(files), Root: ".", Templates: kept})
	return loaded{p, problems, err}
}

// TestTemplatesChangeNothing holds that plans come out the same whether each reads its
// own templates or many share those of one run, sound or spoilt, one after the other
// or side by side.
func TestTemplatesChangeNothing(t *testing.T) {
	sound, spoilt := 0, 0
	rapid.Check(t, func(r *rapid.T) {
		files, boats := drawYard(r)
		alone := map[string]loaded{}
		for _, b := range boats {
			alone[b] = loadFrom(b, files, nil)
			if alone[b].plan != nil {
				sound++
			} else {
				spoilt++
			}
		}
		kept := NewTemplates()
		kept.most = rapid.SampledFrom([]int{1, 200_000, mostKept}).Draw(r, "most kept")
		shared := make([]loaded, 3*len(boats))
		var all sync.WaitGroup
		for i := range shared {
			all.Go(func() { shared[i] = loadFrom(boats[i%len(boats)], files, kept) })
		}
		all.Wait()
		for i, got := range shared {
			if want := alone[boats[i%len(boats)]]; !reflect.DeepEqual(got, want) {
				r.Fatalf("%s\nwith shared templates\n%+v %v\nalone\n%+v %v", boats[i%len(boats)], got.plan, got.problems, want.plan, want.problems)
			}
		}
		if kept.weight > kept.most && len(kept.order) > 1 || len(kept.kept) != len(kept.order) {
			r.Fatalf("%d templates of %d bytes are kept, where %d may", len(kept.order), kept.weight, kept.most)
		}
	})
	if sound == 0 || spoilt == 0 {
		t.Errorf("%d sound plans and %d spoilt ones say little", sound, spoilt)
	}
}

// drawYard draws boats over a few templates, some of them spoilt.
func drawYard(r *rapid.T) (files map[string]string, boats []string) {
	files = map[string]string{
		"classes/warbler.yaml": class,
		"classes/long.yaml":    "chainwale: 1\ntemplate: warbler.yaml\nboat: { class: Long Warbler 26 }\n",
		"classes/round.yaml":   "chainwale: 1\ntemplate: round.yaml\n",
		"classes/broken.yaml":  "chainwale: 1\nboat: { class: [\n",
		"classes/empty.yaml":   "",
	}
	for _, name := range []string{"classes/warbler.yaml", "classes/long.yaml"} {
		files[name] = drawSpoilt(r, files[name])
	}
	templates := rapid.SampledFrom([]string{"warbler", "warbler", "long", "long", "round", "broken", "empty", "nowhere", "/warbler"})
	for i := range rapid.IntRange(2, 5).Draw(r, "boats") {
		name := fmt.Sprintf("boats/sedge-%d.yaml", i)
		text := strings.Replace(boat, "classes/warbler", "classes/"+templates.Draw(r, "template"), 1)
		files[name] = drawSpoilt(r, text)
		boats = append(boats, name)
	}
	return files, boats
}

// drawSpoilt leaves a text as it is, or changes a line of it.
func drawSpoilt(r *rapid.T, text string) string {
	lines := strings.SplitAfter(text, "\n")
	at := rapid.IntRange(0, len(lines)-1).Draw(r, "line")
	switch rapid.IntRange(0, 5).Draw(r, "fault") {
	case 0:
		lines[at] = ""
	case 1:
		lines[at] += lines[at]
	case 2:
		lines[at] = strings.ReplaceAll(lines[at], " mm", "")
	case 3:
		lines[at] = strings.Replace(lines[at], "e", "x", 1)
	}
	return strings.Join(lines, "")
}

// TestTemplatesAreReadOnce holds that a template is opened once for many plans, and so
// is one that is not there.
func TestTemplatesAreReadOnce(t *testing.T) {
	files := sedge()
	for i := range 6 {
		files[fmt.Sprintf("boats/%d.yaml", i)] = boat
		files[fmt.Sprintf("lost/%d.yaml", i)] = strings.Replace(boat, "warbler", "nowhere", 1)
	}
	opened := map[string]int{}
	var mu sync.Mutex
	open := func(name string) (io.ReadCloser, error) {
		mu.Lock()
		opened[name]++
		mu.Unlock()
		return shelf(files)(name)
	}
	kept := NewTemplates()
	var all sync.WaitGroup
	for name := range files {
		if !strings.HasPrefix(name, "classes/") {
			all.Go(func() {
				if _, _, err := Load(name, Options{Open: open, Root: ".", Templates: kept}); err != nil {
					t.Error(err)
				}
			})
		}
	}
	all.Wait()
	if opened["classes/warbler.yaml"] != 1 || opened["classes/nowhere.yaml"] != 1 || opened["boats/0.yaml"] != 1 {
		t.Errorf("opened %v", opened)
	}
}

// TestTemplatesByTwoNames holds that each plan's messages call a shared template as
// that plan does, and that one outside another's root is not let in.
func TestTemplatesByTwoNames(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) {
		t.Helper()
		name = filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("classes/warbler.yaml", strings.Replace(class, "role: forestay", "rolle: forestay", 1))
	write("boats/sedge.yaml", boat)
	write("boats/by-link.yaml", strings.Replace(boat, "../classes/warbler.yaml", "link.yaml", 1))
	if err := os.Symlink("../classes/warbler.yaml", filepath.Join(dir, "boats/link.yaml")); err != nil {
		t.Skip("links can't be made here")
	}
	kept := NewTemplates()
	told := func(boat, root string) string {
		_, problems, err := Load(filepath.Join(dir, boat), Options{Root: filepath.Join(dir, root), Templates: kept})
		if err != nil || len(problems) == 0 {
			t.Fatal(boat, problems, err)
		}
		return strings.TrimPrefix(problems[0].At.File, dir) + ": " + problems[0].Message
	}
	for _, c := range []struct{ boat, root, want string }{
		{"boats/sedge.yaml", ".", "/classes/warbler.yaml: rolle is not a key here"},
		{"boats/by-link.yaml", ".", "/boats/link.yaml: rolle is not a key here"},
		{"boats/sedge.yaml", "boats", "/boats/sedge.yaml: the template"},
		{"boats/by-link.yaml", "boats", "/boats/by-link.yaml: the template"},
		{"boats/sedge.yaml", ".", "/classes/warbler.yaml: rolle is not a key here"},
	} {
		if got := told(c.boat, c.root); !strings.HasPrefix(filepath.ToSlash(got), c.want) {
			t.Errorf("%s under %s: %s, want %s", c.boat, c.root, got, c.want)
		}
	}
}
