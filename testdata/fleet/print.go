package fleet

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
)

// written is a plan in one of the two forms.
func written(plan group, form Form) []byte {
	p := printer{json: form == JSON}
	if p.json {
		p.block(plan, 0)
		p.out.WriteByte('\n')
		return []byte(p.out.String())
	}
	p.yaml(plan, 0)
	return []byte(p.out.String())
}

type printer struct {
	out  strings.Builder
	json bool
}

func (p *printer) indent(depth int) { p.out.WriteString(strings.Repeat("  ", depth)) }

// block writes a value of JSON over as many lines as people give it.
func (p *printer) block(v any, depth int) {
	switch v := v.(type) {
	case group:
		p.rows("{", "}", len(v), depth, func(i int) {
			p.out.WriteString(strconv.Quote(v[i].key) + ": ")
			p.block(v[i].value, depth+1)
		})
	case list:
		if isFlat(v) {
			p.flow(v)
			return
		}
		p.rows("[", "]", len(v), depth, func(i int) { p.block(v[i], depth+1) })
	default:
		p.flow(v)
	}
}

func (p *printer) rows(open, end string, n, depth int, row func(int)) {
	p.out.WriteString(open + "\n")
	for i := range n {
		p.indent(depth + 1)
		row(i)
		if i < n-1 {
			p.out.WriteByte(',')
		}
		p.out.WriteByte('\n')
	}
	p.indent(depth)
	p.out.WriteString(end)
}

// yaml writes keys one under the other.
func (p *printer) yaml(g group, depth int) {
	for i, f := range g {
		if i > 0 {
			p.indent(depth)
		}
		p.out.WriteString(f.key + ":")
		switch v := f.value.(type) {
		case group:
			p.out.WriteByte('\n')
			p.indent(depth + 1)
			p.yaml(v, depth+1)
		case list:
			if !isFlat(v) {
				p.dashes(v, depth+1)
				continue
			}
			p.end(v)
		default:
			p.end(v)
		}
	}
}

func (p *printer) end(v any) {
	p.out.WriteByte(' ')
	p.flow(v)
	p.out.WriteByte('\n')
}

func (p *printer) dashes(v list, depth int) {
	p.out.WriteByte('\n')
	for _, item := range v {
		p.indent(depth)
		p.out.WriteString("- ")
		if g, ok := item.(group); ok {
			p.yaml(g, depth+1)
			continue
		}
		p.flow(item)
		p.out.WriteByte('\n')
	}
}

// isFlat tells a list that stands on one line.
func isFlat(v list) bool {
	for _, item := range v {
		if _, ok := item.(string); !ok {
			return false
		}
	}
	return true
}

// flow writes a value on one line.
func (p *printer) flow(v any) {
	switch v := v.(type) {
	case line:
		p.row("{ ", " }", len(v), func(i int) {
			key := v[i].key
			if p.json {
				key = strconv.Quote(key)
			}
			p.out.WriteString(key + ": ")
			p.flow(v[i].value)
		})
	case list:
		p.row("[", "]", len(v), func(i int) { p.flow(v[i]) })
	case string:
		p.out.WriteString(p.text(v))
	case bool:
		p.out.WriteString(p.yesNo(v))
	default:
		fmt.Fprint(&p.out, v)
	}
}

func (p *printer) row(open, end string, n int, item func(int)) {
	p.out.WriteString(open)
	for i := range n {
		if i > 0 {
			p.out.WriteString(", ")
		}
		item(i)
	}
	p.out.WriteString(end)
}

func (p *printer) text(v string) string {
	if !p.json && !strings.ContainsAny(v, ",:#{}[]\"") {
		return v
	}
	quoted, err := json.Marshal(v)
	if err != nil {
		return strconv.Quote(v) // a text of ours is always one of JSON
	}
	return string(quoted)
}

func (p *printer) yesNo(v bool) string {
	switch {
	case p.json:
		return strconv.FormatBool(v)
	case v:
		return "yes"
	}
	return "no"
}
