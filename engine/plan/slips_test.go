package plan

import "testing"

// Sizes that are sound one by one and no sizes of such a part, readings that are of
// no one size, and holes that run into each other.
func TestSlips(t *testing.T) {
	const (
		thickness = "thickness: [6.35 mm, 6.3 mm]"
		bolt      = "{ role: bolt, diameter: 10 mm, along: 190 mm }"
	)
	for _, c := range []struct {
		old, new string
		want     []string
	}{
		{thickness, "thickness: [6.35 mm, 63 mm, 6.3 mm]", []string{"p.yaml:41:16 /fittings/0/thickness | these 3 readings lie 56.7 mm apart, so their mean says nothing; 63 mm stands out from the others | readings that agree: take the odd one again, "}},
		{thickness, "thickness: [6.35 mm, 5.9 mm]", nil},
		{thickness, "thickness: 6.35 in", []string{"p.yaml:41:16 /fittings/0/thickness | a plate of 161 mm is no part of a sailing boat | the size with its unit: 6 mm is not 6 in"}},
		{thickness, "thickness: 40 mm", []string{"p.yaml:41:16 /fittings/0/thickness | this plate is 40 mm thick and only 38 mm wide"}},
		{"in_plane: 4 deg", "in_plane: [1 deg, 21 deg]", []string{"p.yaml:21:23 /stays/0/lean/in_plane | these 2 readings lie 20 deg apart"}},
		{"in_plane: 4 deg", "in_plane: [1 deg, 3 deg]", nil},
		{"diameter: 12.7 mm", "diameter: 12.7 in", []string{"p.yaml:18:22 /stays/0/pin/diameter | a pin of 323 mm is no part of a sailing boat"}},
		{"diameter: 8 mm", "diameter: 5/16 mm", []string{"p.yaml:15:55 /stays/0/wire/diameter | a wire of 0.312 mm holds no mast"}},
		{"ultimate: 515 MPa }\n    thickness", "ultimate: 5150 MPa }\n    thickness", []string{"p.yaml:40:99 /fittings/0/metal/ultimate | no metal is as strong as 5150 MPa | the strength with its unit: 205 MPa is not 205 ksi"}},
		{bolt, "{ role: bolt, diameter: 10 mm, along: 149 mm }", []string{"p.yaml:46:47 /fittings/0/holes/2/along | this hole runs into the one in line 45: their centres are 9 mm apart and their radii together 10 mm | holes with metal between them; along and across "}},
		{bolt, "{ role: bolt, diameter: 10 mm, along: 150 mm }", []string{"p.yaml:46:47 /fittings/0/holes/2/along | this hole runs into the one in line 45: their centres are 10 mm apart and their radii together 10 mm"}},
		{bolt, "{ role: bolt, diameter: 10 mm, along: 151 mm }", nil},
		{bolt, "{ role: bolt, diameter: 10 mm, along: 140 mm }", []string{"p.yaml:46:47 /fittings/0/holes/2/along | this hole stands where the one in line 45 stands | each hole once, and its own place for each"}},
		{bolt, "{ role: bolt, diameter: 10 mm, along: 140 mm, across: 12 mm }", nil},
		{bolt, "{ role: bolt, diameter: 10 mm, along: 23 mm, across: 8 mm }", []string{"p.yaml:46:47 /fittings/0/holes/2/along | this hole runs into the one in line 44: their centres are 8.94 mm apart and their radii together 11.6 mm"}},
		{bolt, "{ role: bolt, diameter: 10 mm, drill_at_boat: yes }", nil},
		{bolt, "{ role: bolt, along: 140 mm }", nil},
	} {
		t.Run(c.new, func(t *testing.T) { expectAfter(t, []change{{c.old, c.new}}, c.want) })
	}
}
