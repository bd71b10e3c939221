package rule

import (
	"os"
	"testing"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
)

// The small kinds that these tests judge.

type stay struct {
	fact.Subject
	Role        fact.Word   `fact:"role" means:"what the wire does" from:"role" words:"forestay,cap shroud,backstay"`
	BreakLoad   fact.Number `fact:"break_load" unit:"N" means:"load at which the wire breaks"`
	WorkingLoad fact.Number `fact:"working_load" unit:"N" means:"load at work"`
	Toggle      fact.YesNo  `fact:"toggle" means:"a toggle lets the wire swing" from:"toggle" tool:"the eye" where:"at the lower end"`
	Diameter    fact.Number `fact:"diameter" unit:"mm" means:"diameter of the wire" from:"wire/diameter" tool:"calipers" where:"on the wire"`
}

func (*stay) Describe() (string, string) { return "stay", "a wire" }

type metalFacts struct {
	Name  fact.Word   `fact:"name" means:"the metal" from:"metal/name" tool:"mill certificate" where:"on bare metal"`
	Yield fact.Number `fact:"yield" unit:"MPa" means:"yield strength of the metal"`
	PREN  fact.Number `fact:"pren" unit:"" means:"pitting resistance number"`
}

type fitting struct {
	fact.Subject
	State     fact.Word   `fact:"state" means:"kept, remade or new" from:"state" words:"kept,remade,new"`
	Sort      fact.Word   `fact:"kind" means:"sort of part" from:"kind" words:"chainplate,tang,stemhead"`
	Metal     metalFacts  `fact:"metal"`
	Thickness fact.Number `fact:"thickness" unit:"mm" means:"thickness of the plate" from:"thickness" tool:"calipers" where:"beside the pin hole"`
	Width     fact.Number `fact:"width" unit:"mm" means:"width of the plate" from:"outline/width" tool:"calipers" where:"across the pin hole"`
	Hidden    fact.YesNo  `fact:"hidden" means:"it stands where nobody looks" from:"exposure"`
	Titanium  fact.YesNo  `fact:"titanium" means:"the metal is titanium"`
	Access    fact.Word   `fact:"access" means:"how it is reached" from:"access" words:"open,panel,tools,cut"`
	Look      fact.YesNo  `fact:"look_planned" means:"a next look is planned" from:"next_look"`
	Age       fact.Number `fact:"age" unit:"year" means:"age of the part" from:"installed"`
}

func (*fitting) Describe() (string, string) { return "fitting", "a part" }

type landing struct {
	fact.Subject
	Stay    *stay    `fact:"stay"`
	Fitting *fitting `fact:"fitting"`

	Hole          fact.Number `fact:"hole" unit:"mm" means:"diameter of the pin hole" from:"holes/diameter" tool:"calipers" where:"in the hole"`
	End           fact.Number `fact:"end" unit:"mm" means:"from hole to end" from:"holes/along"`
	PinDiameter   fact.Number `fact:"pin_diameter" unit:"mm" means:"diameter of the pin" from:"pin/diameter"`
	PinMeasured   fact.Number `fact:"pin_measured" unit:"mm" means:"diameter of the pin as measured" from:"pin/measured" tool:"calipers" where:"on the pin"`
	Angle         fact.Number `fact:"angle" unit:"deg" means:"lean of the wire" from:"lean"`
	PlateUltimate fact.Number `fact:"plate_ultimate" unit:"N" means:"strength of the plate"`
}

func (*landing) Describe() (string, string) { return "landing", "a stay on a fitting" }

func catalogue(t testing.TB) *fact.Catalogue {
	t.Helper()
	c, err := fact.NewCatalogue(&stay{}, &fitting{}, &landing{})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// trial loads the pack of the tests.
func trial(t testing.TB, c *fact.Catalogue) *Pack {
	t.Helper()
	p, problems := Load(os.DirFS("testdata"), "pack", "testdata/pack", c, LoadOptions{})
	for _, q := range problems {
		t.Errorf("%s:%d:%d: %s (%s)", q.At.File, q.At.Line, q.At.Column, q.Message, q.Expected)
	}
	if p == nil {
		t.FailNow()
	}
	return p
}

func at(line, column int) finding.Place {
	return finding.Place{File: "plan.yaml", Line: line, Column: column}
}
