package fleet

import (
	"bytes"
	"cmp"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"sync"

	"chainwale/engine/finding"
)

// Boat is a plan to be judged: its file, and the folder under which its templates
// must lie.
type Boat struct{ File, Root string }

// Found is what stands in the places that were named.
type Found struct {
	Boats []Boat
	// Templates are files that plans build on: they are judged with their boats.
	Templates []string
	// PassedOver are YAML and JSON files that are no plans, for want of a key
	// chainwale at the top.
	PassedOver []string
	// Problems are places where no plan could be looked for.
	Problems []finding.Problem
}

// Find lists the plans among files and in folders, in the order of the names that
// were given and of the paths below each. In a folder, what another plan names as
// its template is none itself. Hidden folders are left alone, and links are not
// followed out of the folder. root is the folder under which templates must lie; ""
// is the folder that was named, or that of a plan that was named by itself.
func Find(names []string, root string) Found {
	f := &finder{root: root, seen: map[string]bool{}}
	for _, name := range names {
		info, err := os.Stat(name)
		switch {
		case err != nil:
			f.problem(name, "there is no such file or folder", "a plan, or a folder of plans")
		case info.IsDir():
			f.folder(name)
		default:
			f.add(Boat{File: name, Root: cmp.Or(root, filepath.Dir(name))})
		}
	}
	return f.found
}

// finder gathers plans, each once.
type finder struct {
	root  string
	found Found
	seen  map[string]bool
}

func (f *finder) problem(file, message, expected string) {
	f.found.Problems = append(f.found.Problems, finding.Problem{At: finding.Place{File: file, Line: 1, Column: 1}, Message: message, Expected: expected})
}

func (f *finder) add(b Boat) {
	key := whole(b.File)
	if !f.seen[key] {
		f.seen[key] = true
		f.found.Boats = append(f.found.Boats, b)
	}
}

// whole is a file's path by which it is known again.
func whole(name string) string {
	path, err := filepath.Abs(name)
	if err != nil {
		return name
	}
	return path
}

// folder looks through a folder: first for all files that could be plans, then into
// them for what they are.
func (f *finder) folder(root string) {
	var files []string
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			f.problem(name, "this can't be read: "+err.Error(), "a folder that may be read")
			return nil
		case d.IsDir() && name != root && strings.HasPrefix(d.Name(), "."):
			return fs.SkipDir
		case d.Type()&fs.ModeSymlink != 0 && !f.leadsInside(root, name):
			return nil
		case !d.IsDir() && isPlanName(name):
			files = append(files, name)
		}
		return nil
	})
	if err != nil {
		f.problem(root, "this can't be read: "+err.Error(), "a folder that may be read")
	}
	f.sort(root, files)
}

// leadsInside tells whether a link leads to a file under the root. One that leads to
// a folder is not followed: what lies there is found by itself, if it lies here.
func (f *finder) leadsInside(root, link string) bool {
	real, err := filepath.EvalSymlinks(link)
	top, topErr := filepath.EvalSymlinks(root)
	if err != nil || topErr != nil {
		f.problem(link, "this link leads nowhere", "a link to a file under "+root)
		return false
	}
	rel, err := filepath.Rel(whole(top), whole(real))
	if err != nil || !filepath.IsLocal(rel) {
		f.problem(link, "this link leads out of the folder "+root, "a plan that lies under it")
		return false
	}
	info, err := os.Stat(real)
	return err == nil && info.Mode().IsRegular()
}

func isPlanName(name string) bool {
	return slices.Contains([]string{".yaml", ".yml", ".json"}, strings.ToLower(filepath.Ext(name)))
}

// sort tells plans, templates and other files apart.
func (f *finder) sort(root string, files []string) {
	looks := make([]look, len(files))
	each(len(files), func(i int) { looks[i] = lookInto(files[i]) })
	templates := templatesOf(files, looks)
	for i, file := range files {
		switch {
		case templates[whole(file)]:
			f.found.Templates = append(f.found.Templates, file)
		case looks[i].plan:
			f.add(Boat{File: file, Root: cmp.Or(f.root, root)})
		default:
			f.found.PassedOver = append(f.found.PassedOver, file)
		}
	}
}

// templatesOf are the files that boats build on, by way of other templates too. What
// only a circle of templates reaches is none: judged by itself, it says so.
func templatesOf(files []string, looks []look) map[string]bool {
	next, named := map[string]string{}, map[string]bool{}
	for i, l := range looks {
		if l.template != "" {
			next[whole(files[i])] = whole(l.template)
			named[whole(l.template)] = true
		}
	}
	templates := map[string]bool{}
	for _, file := range files {
		if named[whole(file)] {
			continue
		}
		for at, more := next[whole(file)]; more && !templates[at]; at, more = next[at] {
			templates[at] = true
		}
	}
	return templates
}

// look is what a glance into a file tells.
type look struct {
	// plan tells that it has the key chainwale, or that nobody can say.
	plan     bool
	template string
}

var (
	headKey     = regexp.MustCompile(`(?m)^(?:\x{FEFF})?[ \t]*["']?chainwale["']?[ \t]*:|"chainwale"\s*:`)
	templateKey = regexp.MustCompile(`(?m)^["']?template["']?[ \t]*:[ \t]*["']?([^"'#\r\n]+?)["']?[ \t]*(?:#.*)?\r?$|"template"\s*:\s*"([^"\\]+)"`)
)

// mostGlance is how much of a file is looked at: more than a plan may have.
const mostGlance = 1 << 20

// lookInto glances into a file. One that can't be read counts as a plan: judging it
// says what is wrong.
func lookInto(name string) look {
	info, err := os.Stat(name)
	if err != nil || !info.Mode().IsRegular() {
		return look{plan: true}
	}
	file, err := os.Open(name)
	if err != nil {
		return look{plan: true}
	}
	defer file.Close()
	src, err := io.ReadAll(io.LimitReader(file, mostGlance))
	if err != nil {
		return look{plan: true}
	}
	l := look{plan: headKey.Match(fromLineWith(src, "chainwale"))}
	if !l.plan {
		return l
	}
	if m := templateKey.FindSubmatch(fromLineWith(src, "template")); m != nil {
		l.template = filepath.Join(filepath.Dir(name), filepath.FromSlash(string(m[1])+string(m[2])))
	}
	return l
}

// fromLineWith is a text from the first line on that holds a word, nothing if none does.
// To look for a word takes a hundredth of what an expression takes.
func fromLineWith(src []byte, word string) []byte {
	at := bytes.Index(src, []byte(word))
	if at < 0 {
		return nil
	}
	return src[bytes.LastIndexByte(src[:at], '\n')+1:]
}

// each does something for each number below n, on all processors.
func each(n int, do func(int)) {
	var all sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		all.Go(func() {
			for i := range next {
				do(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	all.Wait()
}
