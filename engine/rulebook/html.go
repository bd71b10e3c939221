package rulebook

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"sync"

	"chainwale/engine/rule"
)

//go:embed book.html
var bookHTML string

// book is the template, read when somebody wants HTML.
var book = sync.OnceValues(func() (*template.Template, error) { return template.New("book").Parse(bookHTML) })

// htmlBook is what the template prints.
type htmlBook struct {
	Options
	Bands, Holds, Known, Advises string
	Grades                       any
	Contents                     table
	Chapters                     []htmlChapter
}

type htmlChapter struct {
	*rule.Pack
	Pages []page
}

// HTML writes the book of some packs as one HTML file that needs nothing beside it,
// whole or not at all.
func HTML(w io.Writer, packs []*rule.Pack, o Options) error {
	t, err := book()
	if err != nil {
		return fmt.Errorf("the template of the rule book is not built well: %w", err)
	}
	if o.Glance == "" {
		o.Glance = "The rules at a glance"
	}
	b := htmlBook{Options: o, Bands: howBands, Holds: howHolds, Known: howKnown, Advises: advises, Grades: grades}
	var all []page
	for _, p := range packs {
		pages, err := pagesOf(p)
		if err != nil {
			return err
		}
		all = append(all, pages...)
		b.Chapters = append(b.Chapters, htmlChapter{p, pages})
	}
	b.Contents = contents(all)
	b.Contents.Caption = o.Glance
	var out bytes.Buffer
	if err := t.Execute(&out, b); err != nil {
		return fmt.Errorf("the rule book can't be written: %w", err)
	}
	_, err = w.Write(out.Bytes())
	return err
}
