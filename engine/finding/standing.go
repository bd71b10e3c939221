package finding

// Standing is the order of work with the mast up: what is held in each step, under which
// assumptions, and what to do about it. It never says that a mast is safe.
type Standing struct {
	Chainwale string `json:"chainwale"`
	On        string `json:"on"`
	Plan      string `json:"plan"`
	Boat      string `json:"boat"`
	// Place is afloat or ashore.
	Place       string   `json:"place"`
	Assumptions []string `json:"assumptions"`
	// Before is the rig before anything is eased, nil where that can't be told.
	Before *Held `json:"before"`
	// CantTell says why nothing can be told, where all readings are there; "" otherwise.
	CantTell string         `json:"cant_tell,omitempty"`
	Steps    []StandingStep `json:"steps"`
	// Weakest is the id of the step with least to spare over what is wanted.
	Weakest string `json:"weakest"`
	// StandIns are the stand-ins with what each is worth.
	StandIns []StandInWorth `json:"stand_ins"`
	// Lines are all that stands between mast and hull, for a picture from above.
	Lines []Line `json:"lines"`
	// Suggested is an order that was looked for, nil where nobody asked.
	Suggested *SuggestedOrder `json:"suggested"`
	// StateSheet is what to write down before anything is eased.
	StateSheet []StateLine `json:"state_sheet"`
	// Findings are those of the steps and stand-ins; Measure are the readings that would
	// settle what can't be told of them.
	Findings []Finding `json:"findings"`
	Measure  []Measure `json:"measure"`
	// Cautions stand at the top and at the bottom of the sheet, StepCautions at the top
	// and the bottom of each step, and at the top of one that nobody stands by.
	Cautions     []string `json:"cautions"`
	StepCautions []string `json:"step_cautions"`
}

// StandingStep is one step with what the rig holds while it is on and after it.
type StandingStep struct {
	ID      string   `json:"id"`
	Does    string   `json:"does"`
	At      Place    `json:"at"`
	Fit     []string `json:"fit"`
	Remove  []string `json:"remove"`
	Replace []string `json:"replace"`
	// Attended is yes, no or "" where the plan doesn't say.
	Attended string `json:"attended"`
	// Days is how long a suggested step lasts, 0 where it is done at once.
	Days   float64 `json:"days,omitempty"`
	On     string  `json:"on"`
	Until  string  `json:"until"`
	During *Held   `json:"during"`
	After  *Held   `json:"after"`
	// Tighten are the days, or the times after the step begins, at which lines that
	// stand in have to be hauled tight again and looked at.
	Tighten []string `json:"tighten"`
	Watch   []string `json:"watch"`
	// Shared is what sharing by stiffness makes of it, nil where that can't be told.
	Shared *Shared `json:"shared"`
}

// Shared is a push shared by the stiffness of what holds: of what is counted on, the
// stay that is used most, with its pull in N over what it is counted on for, and how far
// the masthead goes, mm.
type Shared struct {
	Hardest string  `json:"hardest"`
	Used    float64 `json:"used"`
	Pull    float64 `json:"pull_n"`
	Sways   float64 `json:"masthead_sways_mm"`
}

// Held is what a rig holds at one time.
type Held struct {
	Off     []string  `json:"off"`
	Holding []Holding `json:"holding"`
	// Uncounted are stand-ins that are up and count as nothing, with why.
	Uncounted []Holding `json:"uncounted"`
	// Margin is how many times the push is held from the weakest direction, Wanted how
	// many times it has to be; AfterLoss is the same with Lost gone too.
	Margin          float64 `json:"margin"`
	Wanted          float64 `json:"wanted"`
	AfterLoss       float64 `json:"margin_after_loss"`
	WantedAfterLoss float64 `json:"wanted_after_loss"`
	Lost            string  `json:"lost"`
	// Falls is the direction in deg, 0 forward, 90 port, that the mast falls in first,
	// Weakest the same in words; Governs gives first there, Because says on what it hangs.
	Falls   float64 `json:"falls"`
	Weakest string  `json:"weakest"`
	Governs string  `json:"governs"`
	Because string  `json:"because"`
	// Gust is that of the step; at UsedUp the wanted margin is used up, at Gone all that
	// is counted on. In kn.
	Gust   float64 `json:"gust_kn"`
	UsedUp float64 `json:"used_up_kn"`
	Gone   float64 `json:"gone_kn"`
	// Rose is UsedUp for winds from ahead, then round by port in equal steps; -1 where
	// no wind from there uses it up.
	Rose     []float64 `json:"rose_kn"`
	Concerns []string  `json:"concerns"`
}

// Holding is a stay or stand-in that stands, with the pull in N that it is counted on
// for and what that hangs on.
type Holding struct {
	Name    string  `json:"name"`
	Pull    float64 `json:"pull_n"`
	Because string  `json:"because"`
	StandIn bool    `json:"stand_in"`
}

// StandInWorth is a stand-in with the strength of its weakest part, nil where it counts
// as nothing; Says why.
type StandInWorth struct {
	Name     string   `json:"name"`
	Strength *float64 `json:"strength_n"`
	Says     string   `json:"says"`
}

// Line is a stay or stand-in from above: where it lands, forward and to port of the
// mast, in mm.
type Line struct {
	Name    string  `json:"name"`
	X       float64 `json:"x"`
	Y       float64 `json:"y"`
	StandIn bool    `json:"stand_in"`
}

// SuggestedOrder is an order of work that was looked for.
type SuggestedOrder struct {
	Found bool `json:"found"`
	// Says is the outcome in a sentence; Way how the work goes on.
	Says     string   `json:"says"`
	Way      string   `json:"way"`
	StandIns []string `json:"stand_ins"`
	// Margin is the least of all steps over what each has to have: 1 is just enough.
	Margin float64        `json:"margin"`
	Steps  []StandingStep `json:"steps"`
	// Findings are what fails of it when it is judged as if it stood in the plan.
	Findings []Finding `json:"findings"`
	// Exact is false where there were too many jobs to look at every order; Visited
	// counts the states that were looked at.
	Exact   bool `json:"exact"`
	Visited int  `json:"visited"`
}

// StateLine is one thing to write down before anything is eased: of what, what, with
// which tool, and what the plan has of it already.
type StateLine struct {
	Of   string `json:"of"`
	What string `json:"what"`
	Tool string `json:"tool"`
	Has  string `json:"has"`
}
