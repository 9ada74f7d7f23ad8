package cloth

import (
	"slices"

	"tsugime/repeat/geom"
)

// opposed lists the phases at which two members of opposite sign touch by a
// chain.
func (c *chains) opposed() {
	for _, before := range c.members {
		for _, after := range c.members {
			if c.st.sign[before] == c.st.sign[after] {
				continue
			}
			for _, sum := range c.sums {
				c.meeting(before, after, sum, c.slide(after).From)
				c.meeting(before, after, sum, c.slide(after).To)
			}
		}
	}
}

// meeting adds the phases at which a chain from one member on reaches another of
// opposite sign whose seen part is moved that far: as far back as it goes nothing
// is left of its room, as far on it begins to be pushed on.
func (c *chains) meeting(before, after int, sum, slid geom.Length) {
	t := c.st.rest[before] - c.slide(before).To + c.pack.length[before] + sum - c.st.rest[after] + slid
	t = c.mod(c.st.sign[after] * t)
	for _, t := range []geom.Length{t, t - c.period} {
		c.ground = append(c.ground, c.mod(t>>1), c.mod((t+1)>>1))
	}
}

// besideApart lists the phases at which a member is just as far apart from a
// panel whose place is known, or from another member or itself that hangs the
// other way up, as it has to be.
func (c *chains) besideApart() {
	for _, a := range c.st.apart {
		if slices.Contains(c.members, a.i) && slices.Contains(c.members, a.j) {
			c.besideOpposed(a)
			continue
		}
		for _, m := range c.members {
			for _, centre := range a.centres {
				for _, w := range []geom.Length{centre - a.distance, centre + a.distance} {
					switch {
					case a.i == m && c.st.group[a.j] == known:
						c.addVia(m, a.first*c.mod(w+a.second*c.st.rest[a.j]))
					case a.j == m && c.st.group[a.i] == known:
						c.addVia(m, a.second*c.mod(a.first*c.st.rest[a.i]-w))
					}
				}
			}
		}
	}
}

// besideOpposed lists the phases at which two members are just as far apart as
// they have to be, where their signs let the phase count twice.
func (c *chains) besideOpposed(a keepApart) {
	si, sj := a.first*c.st.sign[a.i], a.second*c.st.sign[a.j]
	if si == sj {
		return
	}
	for _, centre := range a.centres {
		for _, w := range []geom.Length{centre - a.distance, centre + a.distance} {
			// 2·si·φ is what is missing from w.
			t := c.mod(si * (w - a.first*c.st.rest[a.i] + a.second*c.st.rest[a.j]))
			for _, t := range []geom.Length{t, t - c.period} {
				c.ground = append(c.ground, c.mod(t>>1), c.mod((t+1)>>1))
			}
		}
	}
}
