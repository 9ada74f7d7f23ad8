package cloth

import (
	"slices"

	"tsugime/repeat/geom"
)

// An asked is what was found for some goals, by number.
type asked struct {
	goals []int
	answer
}

// A room is between what the least cloth for some goals lies: nothing is below
// least, and most, if found, is a laying that reaches them.
type room struct {
	least geom.Length
	most  answer
	never bool // they can't be reached
}

// room returns what answers to fewer and to more goals say of these: more goals
// never take less cloth, and a laying that reaches more reaches these too.
func (q *matcher) room(goals []int) room {
	var r room
	for _, a := range q.asked {
		fewer, more := holds(goals, a.goals), holds(a.goals, goals)
		if fewer && more {
			return room{a.used, a.answer, !a.found}
		}
		if fewer {
			r.least = max(r.least, a.bound)
			r.never = r.never || !a.found && a.exact
		}
		if more && a.found && (!r.most.found || a.used < r.most.used) {
			r.most = a.answer
		}
	}
	if r.most.found && r.most.used <= r.least {
		r.most.exact, r.most.bound = true, r.most.used
	}
	if r.never {
		r.most.used = q.limit + 1
	}
	return r
}

// settled reports whether nothing is left to look for.
func (r room) settled() bool { return r.never || r.most.found && r.most.used <= r.least }

// holds reports whether all of b are among a.
func holds(a, b []int) bool {
	return !slices.ContainsFunc(b, func(k int) bool { return !slices.Contains(a, k) })
}
