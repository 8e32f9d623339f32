# The second opinion: what a port officer would decide of a kit, tool by tool, before anyone has
# said which tool serves which requirement.
#
# `data.rules` is a profile, translated line by line from its YAML; `data.words`
# is the vocabulary. Lengths are whole nanometres, masses whole micrograms, days
# numbers such as 20260302. The freeboard of a scene is one figure, or reaches
# from nothing to endless where nobody measured it.
package opinion

import rego.v1

# --- Three answers ---------------------------------------------------------

no := 0

cannot_tell := 1

yes := 2

# All must hold: the worst answer. Nothing asked, nothing missing.
all_of(answers) := min(array.concat([yes], answers))

# One is enough: the best answer.
one_of(answers) := max(array.concat([no], answers))

not_so(answer) := 2 - answer

# Where several tell the same thing, it is so; where they differ, nobody can
# tell.
agreed(answers) := answers[0] if {
	count({answer | some answer in answers}) == 1
} else := cannot_tell

told(true) := yes

told(false) := no

# --- The figure that a limit names -----------------------------------------

# From the least to the most that it can be, in hundredths, so that a
# percentage needs no rounding.
bound(b) := [b.figure * 100, b.figure * 100] if {
	b.is == "figure"
} else := [max(lows), max(highs)] if {
	b.is == "greater"
	lows := [plain_bound(part)[0] | some part in b.parts]
	highs := [plain_bound(part)[1] | some part in b.parts]
} else := [min(lows), min(highs)] if {
	b.is == "lesser"
	lows := [plain_bound(part)[0] | some part in b.parts]
	highs := [plain_bound(part)[1] | some part in b.parts]
} else := plain_bound(b)

plain_bound(b) := [b.figure * 100, b.figure * 100] if {
	b.is == "figure"
} else := [b.percent * base.least, b.percent * base.most] if {
	base := input.bases[b.of]
}

# --- A reading against a limit ---------------------------------------------

# A tape that is off by `error` shows a figure anywhere in between; nothing
# measures less than nothing.
least(reading) := max([0, reading.value - reading.error]) * 100

most(reading) := (reading.value + reading.error) * 100

keeps(reading, limit) := at_least(reading, bound(limit.bound)) if {
	limit.is == "at least"
} else := min([at_least(reading, bound(limit.low)), at_most(reading, bound(limit.high))]) if {
	limit.is == "from to"
} else := at_most(reading, bound(limit.bound)) if {
	limit.is == "at most"
} else := about(reading, limit) if {
	limit.is == "about"
} else := not_so(at_most(reading, bound(limit.bound))) if {
	limit.is == "more than"
} else := not_so(at_least(reading, bound(limit.bound))) if {
	limit.is == "less than"
} else := yes if {
	limit.is == "any"
}

# Approximate: within the margin it is met; outside nobody can tell.
about(reading, limit) := yes if {
	least(reading) >= (limit.low - limit.margin) * 100
	most(reading) <= (limit.high + limit.margin) * 100
} else := cannot_tell

at_least(reading, b) := yes if {
	least(reading) >= b[1]
} else := no if {
	most(reading) < b[0]
} else := cannot_tell

at_most(reading, b) := yes if {
	most(reading) <= b[0]
} else := no if {
	least(reading) > b[1]
} else := cannot_tell

# --- A word against the words that will do ---------------------------------

# `stainless` may be 316L: the word leaves others open.
word_does(word, allowed) := yes if {
	word in allowed
} else := cannot_tell if {
	some possible in data.words.may_be[word]
	possible in allowed
} else := no

# --- One line of a specification -------------------------------------------

# What the readings of an attribute say to a plain line, with no statement.
read(thing, line) := no if {
	gave_way(thing, line)
} else := agreed(said) if {
	said := [one(reading, line) | some reading in counted(thing, line)]
	count(said) > 0
} else := cannot_tell

readings(thing, line) := object.get(thing.attributes, line.attribute, [])

# One paper may have taken the place of another, so the last word on it counts,
# and on one day what was looked at. A tool stays what it is: once a tape was laid
# along it, no label and no word of mouth counts, of whatever day.
counted(thing, line) := last if {
	thing.paper
	most := max([weight(reading) | some reading in readings(thing, line)])
	last := [reading | some reading in readings(thing, line); weight(reading) == most]
} else := taped if {
	taped := [reading | some reading in readings(thing, line); reading.taped == 1]
	count(taped) > 0
} else := readings(thing, line)

weight(reading) := (reading.on * 2) + reading.taped

# A tool may bend, wear or break, and does not mend by itself: where the last day
# with a tape only knows that it will not do, it will not do.
gave_way(thing, line) if {
	all := counted(thing, line)
	last := max([reading.on | some reading in all])
	said := {one(reading, line) | some reading in all; reading.on == last}
	said == {no}
	count([reading | some reading in all; reading.taped == 0]) == 0
}

one(reading, line) := keeps(reading, line.limit) if {
	line.is == "limit"
} else := told(reading.yes == line.wanted) if {
	line.is == "feature"
} else := word_does(reading.word, line.allowed)

# A statement of conformity to the clause, made by the day, settles what no
# tape and no eye can show and nobody has told, or told by a word that leaves
# it open.
settled(thing, line, spec) if {
	line.attribute in data.words.hidden
	some statement in thing.conforms
	statement.on <= input.day
	statement.to in spec.clauses
}

plain(thing, line, spec) := answer if {
	answer := read(thing, line)
	answer != cannot_tell
} else := yes if {
	settled(thing, line, spec)
} else := cannot_tell

all_plain(thing, group, spec) := all_of([plain(thing, line, spec) | some line in group])

# A group under `any of` or `read as` may hold such groups in its turn, once.
inner(thing, line, spec) := plain(thing, line, spec) if {
	line.attribute
} else := one_of(groups) if {
	line.is == "any of"
	groups := [all_plain(thing, group, spec) | some group in line.groups]
} else := agreed(groups) if {
	line.is == "read as"
	groups := [all_plain(thing, group, spec) | some group in line.groups]
}

all_inner(thing, group, spec) := all_of([inner(thing, line, spec) | some line in group])

outer(thing, line, spec) := plain(thing, line, spec) if {
	line.attribute
} else := one_of(groups) if {
	line.is == "any of"
	groups := [all_inner(thing, group, spec) | some group in line.groups]
} else := agreed(groups) if {
	line.is == "read as"
	groups := [all_inner(thing, group, spec) | some group in line.groups]
}

fit(thing, spec) := all_of([outer(thing, line, spec) | some line in spec.lines])

# --- A tool against every specification of its kind ------------------------

rules := data.rules[input.profile]

fits[spec.id] := fit(input.tool, spec) if some spec in rules.by_kind[input.kind]

# The same line by line, for whoever asks why.
because[spec.id] := lines if {
	some spec in rules.by_kind[input.kind]
	lines := [{"line": line.written, "answer": outer(input.tool, line, spec)} | some line in spec.lines]
}

# --- Whether a tool can serve on a day -------------------------------------

serves[format_int(day, 10)] := all_of([
	condition,
	aboard(day),
	bought(day),
	unexpired(day),
]) if {
	some day in input.days
}

condition := {"serviceable": yes, "broken": no, "unknown": cannot_tell}[input.condition]

aboard(day) := yes if {
	input.where.is == "aboard"
} else := cannot_tell if {
	input.where.is == "unknown"
} else := yes if {
	input.where.is == "lent"
	not lent_on(day)
} else := no

lent_on(day) if {
	day >= input.where.from
	day <= input.where.until
}

bought(day) := no if {
	input.acquired > day
} else := yes

unexpired(day) := no if {
	day > input.expires
} else := yes

# Inspected within so many months: good through the day before the
# anniversary. An inspection ahead of the day counts for nothing.
inspected[format_int(months, 10)] := by_day if {
	some months in rules.intervals
	by_day := {format_int(day, 10): in_date(input.inspected, months, day) | some day in input.days}
}

in_date(from, months, day) := cannot_tell if {
	from == null
} else := cannot_tell if {
	from > day
} else := told(day < anniversary(from, months))

# A day that a month lacks is the month's last day.
anniversary(from, months) := day if {
	date := from % 100
	month := ((from % 10000) - date) / 100
	year := (from - (from % 10000)) / 10000
	ahead := (year * 12) + (month - 1) + months
	then := (ahead % 12) + 1
	that_year := (ahead - (ahead % 12)) / 12
	day := (that_year * 10000) + (then * 100) + min([date, month_length(that_year, then)])
}

month_length(year, month) := 29 if {
	month == 2
	leap(year)
} else := 28 if {
	month == 2
} else := 30 if {
	month in {4, 6, 9, 11}
} else := 31

leap(year) if {
	year % 4 == 0
	year % 100 != 0
}

leap(year) if year % 400 == 0

# --- Conditions on the vessel and the trip ---------------------------------

holds(c) := listed(input.permits, c) if c.is == "permit"

holds(c) := listed(input.gear, c) if c.is == "gear"

holds(c) := listed(input.areas, c) if c.is == "area"

holds(c) := cannot_tell if {
	c.is == "area other than"
	input.areas == null
} else := yes if {
	c.is == "area other than"
	some area in input.areas
	area in data.words.tags
	area != c.tag
} else := cannot_tell if {
	c.is == "area other than"
	some area in input.areas
	not area in data.words.tags
} else := no if {
	c.is == "area other than"
}

holds(c) := cannot_tell if {
	c.is == "feature"
	object.get(input.features, c.feature, null) == null
} else := told(input.features[c.feature] == c.wanted) if {
	c.is == "feature"
}

holds(c) := told(month_within(c.first, c.last)) if c.is == "months"

holds(c) := above(c.figure) if {
	c.is == "freeboard"
	c.side == "more than"
}

holds(c) := not_so(above(c.figure)) if {
	c.is == "freeboard"
	c.side == "or less"
}

holds(c) := below(c.figure) if {
	c.is == "freeboard"
	c.side == "less than"
}

holds(c) := not_so(below(c.figure)) if {
	c.is == "freeboard"
	c.side == "or more"
}

# A word that nobody knows may mean what is asked, but no rule is found by it.
listed(tags, c) := cannot_tell if {
	tags == null
} else := yes if {
	c.tag in tags
} else := cannot_tell if {
	not c.finds
	some tag in tags
	not tag in data.words.tags
} else := no

month_within(first, last) := true if {
	month := ((input.day % 10000) - (input.day % 100)) / 100
	month >= first
	month <= last
} else := false

above(figure) := yes if {
	input.bases.freeboard.least > figure
} else := no if {
	input.bases.freeboard.most <= figure
} else := cannot_tell

below(figure) := yes if {
	input.bases.freeboard.most < figure
} else := no if {
	input.bases.freeboard.least >= figure
} else := cannot_tell

hold_all(conditions) := all_of([holds(c) | some c in conditions])

# --- Which rule and which requirement binds --------------------------------

# In a line of `binds:` one match is enough; all the lines must match.
names := all_of([one_matches(line) | some line in rules.binds])

one_matches(line) := one_of([holds(c) | some c in line])

# What the vessel states points to the rule, even where it does not settle it.
default pointed_to := false

pointed_to if {
	some line in rules.binds
	some c in line
	holds(c) == yes
}

in_force := told(day_within(rules.from, rules.until))

day_within(from, until) := true if {
	input.day >= from
	input.day <= until
} else := false

# `input.governs` is what `names` says of the vessel; the house that is used
# where no rule names her governs whatever else is so.
binds[requirement.id] := all_of([
	input.governs,
	held_on_the_day(requirement),
	hold_all(requirement.when),
	not_so(let_off(requirement)),
]) if {
	some requirement in rules.requirements
}

held_on_the_day(requirement) := yes if {
	requirement.always
} else := told(day_within(requirement.from, requirement.until))

let_off(requirement) := one_of([hold_all(group) | some group in requirement.unless])

# Which alternatives are open on this vessel, of those that are not always.
open[spec.id] := hold_all(spec.when) if some spec in rules.not_always_open

# --- What needs no tool: certificates and the vessel's own gear ------------

own[requirement.id] := answer if {
	some requirement in rules.requirements
	requirement.certificate
	answer := certified(requirement)
}

certified(_) := cannot_tell if input.people == null

certified(requirement) := all_of(each) if {
	input.people != null
	each := [role_certified(role, requirement) | some role in requirement.roles]
}

# Who is aboard was said: a role that none of them fills has no certificate.
role_certified(role, _) := no if count(people_of(role)) == 0

role_certified(role, requirement) := one_of(each) if {
	each := [person_certified(person, requirement) | some person in people_of(role)]
	count(each) > 0
}

people_of(role) := [person | some person in input.people; role in person.roles]

person_certified(person, requirement) := one_of(each) if {
	each := [good(c, requirement) |
		some c in person.certificates
		c.kind == requirement.certificate
	]
}

good(c, requirement) := no if {
	input.day > c.expires
} else := no if {
	c.issued > input.day
} else := in_date(c.issued, requirement.months, input.day)

# Every hook aboard must keep one of the alternatives; `input.hooks` is what
# `fits` says of each.
own[requirement.id] := answer if {
	some requirement in rules.requirements
	requirement.all_of_kind
	answer := gear_kept(requirement)
}

gear_kept(_) := cannot_tell if input.hooks == null

gear_kept(requirement) := min([all_of(each), input.hooks_all_listed]) if {
	input.hooks != null
	each := [hook_kept(hook, requirement) | some hook in input.hooks]
}

hook_kept(hook, requirement) := one_of(each) if {
	each := [answer |
		some spec in rules.by_kind.hook
		spec.requirement == requirement.id
		answer := min([hold_all(spec.when), hook[spec.id]])
	]
}
