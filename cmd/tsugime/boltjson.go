package main

type placementJSON struct {
	N        int    `json:"n"`
	Y        mm     `json:"y_mm"`
	Face     string `json:"face"`
	WalkX    mm     `json:"walk_x_mm"`
	WalkY    mm     `json:"walk_y_mm"`
	LaidAs   int    `json:"laid_as"`  // as which one of its cloth, from 0
	Between  bool   `json:"between"`  // two finished ones
	Mirrored bool   `json:"mirrored"` // along
	Stretch  int    `json:"stretch"`  // its number in stretches
}

// A stretchJSON is cloth that lies on the board at one time.
type stretchJSON struct {
	Go       int     `json:"go"`
	Cloth    int     `json:"cloth"`
	From     mm      `json:"from_mm"`
	To       mm      `json:"to_mm"`
	OnBoard  mm      `json:"on_board_mm"` // a place y of the cloth lies at on_board + y
	First    int     `json:"first"`
	Count    int     `json:"count"`
	FaceA    int     `json:"on_face_a"`
	FaceB    int     `json:"on_face_b"`
	InTurn   int     `json:"in_turn"`
	Turns    [][2]mm `json:"turns_mm"`
	Overhang mm      `json:"overhang_mm"`
}

type partialJSON struct {
	N       int `json:"n"`
	Y       mm  `json:"y_mm"`
	Printed mm  `json:"printed_mm"`
	Masked  mm  `json:"masked_mm"`
}

type driftJSON struct {
	Way        string  `json:"way"`
	EndX       mm      `json:"end_x_mm"`
	EndY       mm      `json:"end_y_mm"`
	WorstJoint mm      `json:"worst_joint_mm"`
	ShareY     mm      `json:"share_y_mm"` // of end_y, what is no chance
	Within     rounded `json:"within_pct"` // odds that no joint opens by more than tolerance
	Tolerance  mm      `json:"tolerance_mm"`
	Skew       rounded `json:"skew_pct"` // of the last placement's rows, standard deviation
}

type simulatedJSON struct {
	Bolts      int     `json:"bolts"`
	Seed       uint64  `json:"seed"`
	MeanX      mm      `json:"mean_x_mm"`
	MeanY      mm      `json:"mean_y_mm"`
	SpreadX    mm      `json:"spread_x_mm"`
	SpreadY    mm      `json:"spread_y_mm"`
	WorstJoint mm      `json:"worst_joint_mm"`
	Within     rounded `json:"within_pct"`
}

type eyeJSON struct {
	Distance mm     `json:"distance_mm"`
	Plain    mm     `json:"plain_mm"`
	Crisp    mm     `json:"crisp_mm"`
	Joint    string `json:"worst_joint"` // how visible it is
}

type overlayJSON struct {
	Prints    int     `json:"prints"`
	Along     mm      `json:"along_mm"`
	Across    mm      `json:"across_mm"`
	Worst     mm      `json:"worst_mm"`
	Within    rounded `json:"within_pct"`
	Tolerance mm      `json:"tolerance_mm"`
	// What bolts laid by chance came to.
	Bolts      int     `json:"simulated_bolts"`
	LaidWorst  mm      `json:"simulated_worst_mm"`
	LaidWithin rounded `json:"simulated_within_pct"`
}

type mirrorJSON struct {
	Group string `json:"plane_group"`
	Found bool   `json:"found"`
	Off   mm     `json:"off_mm"`
	Glide mm     `json:"glide_mm"`
}

// A clearingJSON tells what panels lie over the turn, and how to lay them beside it.
type clearingJSON struct {
	Over   []string `json:"over"`
	Found  bool     `json:"found"`
	Start  mm       `json:"start_mm"`
	Before []string `json:"gap_before"`
	Gap    mm       `json:"gap_mm"`
	Extra  mm       `json:"extra_cloth_mm"`
	Lacks  mm       `json:"lacks_mm"`
}

type foldJSON struct {
	mirrorJSON
	Over  int `json:"cut_outs_over"`
	Reach mm  `json:"reach_mm"`
}

type reverseJSON struct {
	Mirror    mirrorJSON `json:"mirror"`
	TurnSheet bool       `json:"turn_sheet"`
	Stars     [][2]int   `json:"stars"` // of the front, and of the unturned sheet on the back
}

type gainJSON struct {
	Remedy      string `json:"remedy"`
	JointBefore mm     `json:"joint_before_mm"`
	JointAfter  mm     `json:"joint_after_mm"`
	EndBefore   mm     `json:"end_before_mm"`
	EndAfter    mm     `json:"end_after_mm"`
	Gain        mm     `json:"gain_mm"` // both together
}

type markJSON struct {
	Cloth   int    `json:"cloth"`
	Stretch int    `json:"stretch"`
	N       int    `json:"n"`
	Face    string `json:"face"`
	At      mm     `json:"at_mm"` // from the board's near end, on this face
	Y       mm     `json:"y_mm"`
	Turn    bool   `json:"in_turn"`
	Part    bool   `json:"in_part"`
	End     bool   `json:"end"`
}

type boltJSON struct {
	Schema     int             `json:"schema"`
	Count      int             `json:"count"`
	Step       mm              `json:"step_mm"`
	Remainder  mm              `json:"remainder_mm"`
	Placements []placementJSON `json:"placements"`
	Drift      driftJSON       `json:"drift"`
	Needed     int             `json:"needed"`
	Printings  int             `json:"printings"` // of all cloths, sheets and sides
	Order      string          `json:"order"`
	Sheets     int             `json:"sheets"`
	Usable     [2]mm           `json:"usable_mm"` // between the selvedges, on the board
	Partial    *partialJSON    `json:"partial"`   // null where nothing is laid in part
	Stretches  []stretchJSON   `json:"stretches"`
	Simulated  *simulatedJSON  `json:"simulated"` // null without stars
	Eye        []eyeJSON       `json:"eye"`
	Gains      []gainJSON      `json:"gains"`
	Set        *overlayJSON    `json:"set"`     // null for one sheet
	Back       *overlayJSON    `json:"back"`    // null for one side
	Reverse    *reverseJSON    `json:"reverse"` // null for one side
	Fold       *foldJSON       `json:"fold"`    // null for a cloth that isn't folded
	Marks      []markJSON      `json:"marks"`
	Clearing   clearingJSON    `json:"clear_turn"`
}
