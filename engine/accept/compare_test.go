package accept

import (
	"encoding/json"
	"strings"
	"testing"

	"chainwale/engine/finding"
)

// TestAgainst holds how each sort of finding compares, and which of them is news.
func TestAgainst(t *testing.T) {
	of := func(o finding.Outcome, g finding.Grade) []finding.Finding {
		return []finding.Finding{portPlate(o, g)}
	}
	accepted := func(f []finding.Finding) []finding.Finding {
		f[0].Accepted = &finding.Acceptance{Who: "the owner", Why: "so", Until: "2027-01-01"}
		return f
	}
	for name, test := range map[string]struct {
		was, now []finding.Finding
		// want is what becomes of it: new, gone, same, or how it changed.
		want string
		news bool
	}{
		"new":                          {nil, of(finding.Fails, finding.Mend), "new", true},
		"new, as a watch":              {nil, of(finding.Fails, finding.Watch), "new", false},
		"new, and accepted":            {nil, accepted(of(finding.Fails, finding.Stop)), "new", false},
		"new after holding":            {of(finding.Holds, ""), of(finding.CannotTell, finding.Mend), "new", true},
		"as it was":                    {of(finding.Fails, finding.Stop), of(finding.Fails, finding.Stop), "same", false},
		"worse":                        {of(finding.Fails, finding.Watch), of(finding.Fails, finding.Mend), "worse", true},
		"worse, and no more to tell":   {of(finding.Fails, finding.Mend), of(finding.CannotTell, finding.Stop), "worse", true},
		"milder":                       {of(finding.Fails, finding.Stop), of(finding.Fails, finding.Mend), "milder", false},
		"can't be told any more":       {of(finding.Fails, finding.Stop), of(finding.CannotTell, finding.Mend), "turned", true},
		"can be told now":              {of(finding.CannotTell, finding.Mend), of(finding.Fails, finding.Mend), "turned", true},
		"can be told now, and a watch": {of(finding.CannotTell, finding.Mend), of(finding.Fails, finding.Watch), "turned", false},
		"accepted no more":             {accepted(of(finding.Fails, finding.Mend)), of(finding.Fails, finding.Mend), "returned", true},
		"accepted now":                 {of(finding.Fails, finding.Mend), accepted(of(finding.Fails, finding.Mend)), "same", false},
		"gone":                         {of(finding.Fails, finding.Stop), nil, "gone", false},
		"gone, as it holds":            {of(finding.Fails, finding.Stop), of(finding.Holds, ""), "gone", false},
		"held and holds":               {of(finding.Holds, ""), of(finding.Holds, ""), "", false},
	} {
		c := Against(report(test.now...), report(test.was...))
		if got := sorted(c); got != test.want {
			t.Errorf("%s: %q, wanted %q", name, got, test.want)
		}
		if got := c.Refused(finding.Mend); got != test.news {
			t.Errorf("%s: refused by what is new: %v", name, got)
		}
	}
}

// sorted says in a word where the one finding of a comparison went.
func sorted(c Comparison) string {
	var said []string
	for range c.New {
		said = append(said, "new")
	}
	for _, change := range c.Changed {
		said = append(said, string(change.How))
	}
	for range c.Gone {
		said = append(said, "gone")
	}
	for range c.NotJudged {
		said = append(said, "not judged")
	}
	if c.Same > 0 {
		said = append(said, "same")
	}
	return strings.Join(said, " ")
}

// TestPackThatDidNotJudge holds that what a pack found is not called gone when the
// pack did not judge; the program's own findings always judge.
func TestPackThatDidNotJudge(t *testing.T) {
	yard := portPlate(finding.Fails, finding.Stop)
	yard.Pack = "yard"
	lapsed := found(Lapsed, "acceptance:x as mend", part, finding.Fails, finding.Watch)
	lapsed.Pack = Pack
	if got := sorted(Against(report(), report(yard, lapsed))); got != "gone not judged" {
		t.Error(got)
	}
}

// TestEarlier holds which files can be compared with, and what is said of the others.
func TestEarlier(t *testing.T) {
	write := func(change func(*finding.Report)) []byte {
		r := report(portPlate(finding.Fails, finding.Mend))
		r.Version = finding.ReportVersion
		change(&r)
		src, err := json.Marshal(r)
		if err != nil {
			t.Fatal(err)
		}
		return src
	}
	if r, err := Earlier(write(func(*finding.Report) {}), "Quillfish"); err != nil || len(r.Findings) != 1 {
		t.Errorf("%v: %+v", err, r)
	}
	for want, src := range map[string][]byte{
		"not a report":                        []byte("chainwale: 1\n"),
		"the report is of version 2":          write(func(r *finding.Report) { r.Version = 2 }),
		"judged nothing":                      write(func(r *finding.Report) { r.Packs = nil }),
		`of the boat "Hake", and this plan`:   write(func(r *finding.Report) { r.Boat = "Hake" }),
		"this is not a report of chainwale: ": []byte(`{"report": 1, "findings": 3}`),
	} {
		if _, err := Earlier(src, "Quillfish"); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, wanted %q", err, want)
		}
	}
}

// TestForReport holds that what a report carries names its findings, and comes back
// when the report is read.
func TestForReport(t *testing.T) {
	was := report(portPlate(finding.Fails, finding.Watch), found("pin-fits", "landing:backstay", "backstay-plate", finding.CannotTell, finding.Mend))
	was.On = "2026-04-01"
	now := report(portPlate(finding.Fails, finding.Mend), found("pin-fits", "landing:cap-shroud-port", "cap-plate-port", finding.Fails, finding.Mend))
	now.Against = Against(now, was).ForReport("last.json", []byte("{}"))
	a := now.Against
	if a.File != "last.json" || a.On != "2026-04-01" || a.Hash != "sha256:44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a" || a.Same != 0 {
		t.Errorf("%+v", a)
	}
	if len(a.New) != 1 || a.New[0] != fingerprint("pin-fits", "landing:cap-shroud-port") || len(a.Changed) != 1 || a.Changed[0].How != finding.Worse || a.Changed[0].Was.Grade != finding.Watch ||
		len(a.Gone) != 1 || a.Gone[0].Subject != "landing:backstay" || a.Gone[0].Outcome != finding.CannotTell || a.NotJudged == nil {
		t.Errorf("%+v", a)
	}
	now.Version = finding.ReportVersion
	src, err := json.Marshal(now)
	if err != nil {
		t.Fatal(err)
	}
	if back, err := finding.Read(src); err != nil || back.Against == nil || back.Against.Gone[0] != a.Gone[0] {
		t.Errorf("%v", err)
	}
}
