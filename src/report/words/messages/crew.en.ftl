### Everything that skippers, crews and inspectors on deck read.
###
### A message is one paragraph, however it is broken into lines here. Figures,
### days and names arrive as finished text; a number that chooses between
### singular and plural names each class of the language. Of several arguments
### the comment above the message gives the order of the calls.

## What stands on every page

foot = Check the current rule and local conditions; local rules, permits and trained practice come
    first; this tool is an aid, no legal advice.
caution = Take care: measure and mend gear in harbour, with points and blades covered, two people
    to a long pole; handle turtles only as you were trained to.
only-practice = by good practice only, no rule was checked

## The verdict: as a label, and within a sentence


## Lists, figures and what is asked of them

# $head, $last
list-any = { $head } or { $last }
# $head, $last
list-all = { $head } and { $last }
yes = yes
no = no
demand-least = at least { $figure }
demand-above = more than { $figure }
demand-most = at most { $figure }
demand-below = less than { $figure }
demand-exactly = exactly { $figure }
# $low, $high
demand-between = from { $low } to { $high }
demand-open = what a missing fact of the vessel decides
# $figure, $margin
demand-about = about { $figure }, within { $margin }
# $low, $high, $margin
demand-about-between = about { $low } to { $high }, within { $margin }
demand-approximate = what the rule calls approximate
demand-any = any
must-be = must be { $demand }
it-must-be = it must be { $demand }
# $percent, $base
bound-share = { $percent } of { $base }
bound-greater = the greater of { $figures }
bound-lesser = the lesser of { $figures }
base-freeboard = freeboard
base-heaviest-hook = the heaviest hook aboard
base-thickest-line = the thickest line aboard
base-thickest-leader = the thickest leader aboard
freeboard-just-over = just over { $figure }
freeboard-just-under = just under { $figure }
difference-below = less than { $figure }
difference-sizes =
    { $sizes ->
        [one] 1 size
       *[other] { $sizes } sizes
    }
place-rail = the top of the rail
place-deck = the working deck

## Days

days-one = of one day, { $day }
# $from, $until
days-between = { $from } to { $until }
days-from = from { $day } on
days-until = until { $day }
days-any = on any day

## Why a profile was used

why-binds = it binds this vessel
why-may-bind = it may bind this vessel: { $unknown }
why-asked = it was asked for
why-fallback = used because no rule here names this vessel

## What there is to tell about a check as a whole, and what to do about it

notice-no-rule-names-vessel = no rule that is known here names this vessel: good practice was used
    instead; whether a rule binds it is for the skipper to find out
notice-not-in-force = `{ $profile }` was asked for, but is not in force on these days
notice-does-not-bind = `{ $profile }` was asked for, but does not bind this vessel
# $rule, $day
notice-no-edition = can't tell: `{ $rule }` binds this vessel, but no edition of it is known for
    { $day }
notice-unknown-permit = can't tell: no permit called { $words } is known here, so that no rule was
    looked up by it
notice-unknown-gear = can't tell: no fishing gear called { $words } is known here, so that no rule
    was looked up by it
notice-unknown-area = can't tell: no area called { $words } is known here, so that no rule was
    looked up by it
notice-unknown-fact = can't tell: no fact called { $words } is known here, so that no rule was
    looked up by it
notice-may-bind-by-permits = `{ $rule }` may bind this vessel and was not judged: its file does not
    say which permits it holds
notice-may-bind-by-gear = `{ $rule }` may bind this vessel and was not judged: its file does not say
    which fishing gear is aboard
notice-may-bind-by-areas = `{ $rule }` may bind this vessel and was not judged: its file does not
    say to which areas the trip goes
notice-may-bind-by-freeboard = `{ $rule }` may bind this vessel and was not judged: its file does
    not say for sure what its freeboard is
notice-may-bind-by-fact = `{ $rule }` may bind this vessel and was not judged: its file does not say
    all that decides it
notice-record-after-departure = the inspection record of { $day } is dated after departure and was
    not laid over
notice-freeboard-other-place = the freeboard in the record of { $day } was taken from the other
    place (rail or working deck) than the declared one, and does not count
notice-sheet-of-other-vessel-and-rules = the sheet of the inspection record of { $day } was printed
    from another state of the vessel's file and other rules
notice-sheet-of-other-vessel = the sheet of the inspection record of { $day } was printed from
    another state of the vessel's file
notice-sheet-of-other-rules = the sheet of the inspection record of { $day } was printed from other
    rules, or another revision of them
notice-no-return = no day of return is known: judged as a trip of one day

notice-ask-port-office = ask the port office which text binds on { $day }, and go by that
notice-mend-spelling = mend the spelling if it is a slip (`kitmuster words` lists those that are
    known); else ask the port office which rule binds
notice-write-permits = write `permits:` into the vessel's file, `permits: []` if there is none
notice-write-gear = write `gear:` into the vessel's file, `gear: []` if there is none
notice-write-areas = write `areas:` into the vessel's file, `areas: []` if there is none
notice-write-fact = write it into the vessel's file
notice-mend-day = check a trip that departs on { $day } or later, or mend the day of the record
notice-check-rows = see that its rows still mean the same tools and figures; the record counts as it
    stands
notice-measure-freeboard = measure the freeboard again from where the rule takes it

## Why a requirement is not met, or what is missing

# $broken, $all
reason-part-broken =
    { $broken ->
        [one] 1 of { $all } does not work
       *[other] { $broken } of { $all } do not work
    }
reason-nothing-aboard = no { $kinds } aboard

## Verdicts and outcomes

verdict-ready = ready
verdict-cannot-tell = can't tell
verdict-not-ready = not ready
verdict-ready-aloud = READY
verdict-cannot-tell-aloud = CAN'T TELL
verdict-not-ready-aloud = NOT READY
outcome-met = met
outcome-cannot-tell = can't tell
outcome-not-met = not met

## What stands in front of a text

lead-note = note
lead-do = do
# $kind, $have, $need
reason-too-few =
    { $kind }: { $have ->
        [0] none counts of the { $need } asked
        [one] only 1 of the { $need } asked counts
       *[other] only { $have } of the { $need } asked count
    }
# $need, $have
reason-too-few-types =
    { $need ->
        [one] 1 complete type asked, { $have } there
       *[other] { $need } different types asked, { $have } complete
    }
reason-types-begun = begun but not complete: { $types }
# $attribute, $has, $short, $freeboard, $least
reason-too-short-for-rail = { $attribute } { $has } is { $short } too short for the rail; at a
    freeboard of { $freeboard } it must be at least { $least }
# $attribute, $has, $demand
reason-figure-outside = { $attribute } { $has }, must be { $demand }
# $attribute, $has, $demand, $by
reason-figure-short = { $attribute } { $has }, must be { $demand }: { $by } short
# $attribute, $has, $demand, $by
reason-figure-over = { $attribute } { $has }, must be { $demand }: { $by } too much
# $attribute, $has, $demand
reason-property-outside = { $attribute }: { $has }, must be { $demand }
reason-no-alternative = fits none of the ways left open ({ $attributes })
# $acquired, $before
reason-acquired-too-late = acquired on { $acquired }; tolerated only if acquired before { $before }
reason-not-serviceable = does not work
reason-lent = lent to { $vessel }
reason-not-aboard = not aboard
reason-missing = lost, or looked for and not found
reason-inspection-lapsed = inspection overdue since { $day }
reason-expired = out of date since { $day }
# $day, $last
reason-inspection-lapses = its inspection runs out during the trip, on { $day } (good through
    { $last })
# $day, $last
reason-expires = it goes out of date during the trip, on { $day } (good through { $last })
reason-taken = would do, but is needed for { $requirement }
reason-part-taken = its part { $part } is needed for another tool
reason-fits-nothing = fits no tool that serves for { $requirement }
reason-role-uncertified = no { $role } holds a valid certificate
# $need, $have
reason-too-few-certified = { $need } people with a valid certificate asked, { $have } there
reason-certificate-lapsed = the latest one is out of date since { $day }
# $attribute, $has
reason-left-open = { $attribute }: { $has } leaves it open
reason-not-measured = { $attribute } not measured
reason-not-said = { $attribute }: nobody said
# $attribute, $readings
reason-disputed = { $attribute }: the readings { $readings } lie on both sides of the limit
# $value, $person, $day
reading-by-on = { $value } by { $person } on { $day }
# $value, $person
reading-by = { $value } by { $person }
# $value, $day
reading-on = { $value } on { $day }
# $attribute, $has, $limit
reason-approximate = { $attribute } { $has }, the rule says { $limit }, and outside that nobody can
    tell
reason-wording-disputed = the rule's wording can be read in ways that differ here ({ $attributes })
reason-state-unknown = nobody said whether it works
reason-whereabouts-unknown = nobody said where it is
reason-inspection-undated = no day of its last inspection is known
reason-acquired-unknown = no day of acquisition is known; tolerated only if before { $day }
reason-not-listed = no { $kinds } listed, but not everything aboard is listed
reason-spare-fit-unknown = nobody said which tool it fits
reason-certificate-undated = the certificate of { $person } has no date
reason-binding-unknown = whether this is asked of the vessel is open: { $unknown }
reason-hangs-on = met once `{ $requirement }` is settled
reason-too-many-ways = there are too many ways to share out the kit; the search was stopped
reason-not-encoded = the rule is known, not encoded
reason-no-edition = no edition of the rule is known for { $day }

## Facts of the vessel that are missing

unknown-freeboard = the freeboard was not measured
# $taken, $asked
unknown-freeboard-taken-from = the freeboard was taken from { $taken }, the rule takes it from
    { $asked }
unknown-freeboard-disputed = the readings of the freeboard differ
unknown-permits = nobody said which permits the vessel holds
unknown-permit-name = one of the vessel's permits is not known here
unknown-gear = nobody said which fishing gear is aboard
unknown-gear-name = one of the gears aboard is not known here
unknown-areas = nobody said to which areas the trip goes
unknown-area-name = one of the trip's areas is not known here
unknown-feature = nobody said whether the vessel has { $feature }
unknown-hooks = the hooks aboard, or type or wire of one, are not known
unknown-lines = the lines aboard, or the diameter of one, are not known
unknown-people = nobody said who is aboard, with what roles and certificates
unknown-aboard = nobody can tell whether a working { $kind } is aboard

## How a missing fact is found out, in the imperative

find-freeboard = measure the freeboard from { $place } to the water, where the gear is hauled
find-freeboard-again = measure the freeboard again from { $place } to the water, and strike out the
    wrong reading
find-permits = write down the permits that the vessel holds
find-permit-name = write down the permits that the vessel holds by a name that `kitmuster words`
    lists
find-gear = write down the fishing gear that is aboard
find-gear-name = write down the fishing gear that is aboard by a name that `kitmuster words` lists
find-areas = write down the areas of the trip
find-area-name = write down the areas of the trip by a name that `kitmuster words` lists
find-feature = write down whether the vessel has { $feature }
find-hooks = write down every kind of hook aboard, with type and wire of each
find-lines = write down every kind of line aboard, with the diameter of each
find-people = write down who is aboard, with roles and certificates
find-aboard = look whether a { $kind } is aboard and works

## What settles a can't tell, in the imperative

settle-unnamed = it
# $mark, $what
settle-look = look at { $mark } and write down: { $what }
# $mark, $clause, $what
settle-statement = get a dated statement that { $mark } conforms to { $clause } ({ $what })
# $mark, $what
settle-measure-all = measure on { $mark }: { $what }
# $attribute, $mark
settle-measure = measure the { $attribute } of { $mark }
# $attribute, $mark
settle-measure-again = measure the { $attribute } of { $mark } again
settle-key = write it as `{ $key }`
# $attribute, $mark, $limit
settle-approximate = ask the authority whether the { $attribute } of { $mark } will do, or bring one
    of { $limit }
settle-wording = ask the authority how { $clause } is to be read, or bring one that keeps every
    reading
settle-state = try out whether { $mark } works, and write it down
settle-whereabouts = find out where { $mark } is
settle-inspection = look up when { $mark } was last inspected, or have it inspected
settle-acquired = look up when { $mark } was acquired
settle-not-listed = look aboard for: { $kinds }; write down what is there
settle-spare-fit = write down which tool { $mark } fits
settle-certificate = look up the dates on the certificate of { $person }
settle-too-many-ways = list equal tools as one lot with a count, and leave out what is not for
    turtles
settle-no-edition = ask the authority for the text of `{ $rule }` in force
settle-by-hand = go through the kit by hand, with the text of { $source }
# $piece, $what
settle-piece = write down of { $piece }: { $what }
settle-any-piece = look at { $piece } and write down what it is like
settle-if-asked = if it is asked: { $what }

## What a tool must be like

# $attribute, $demand
wish = { $attribute } of { $demand }
# $attribute, $demand
term = { $attribute } { $demand }
term-not = { $attribute }: no
# $kind, $clause
asked-by-clause = { $kind } as { $clause } asks
# $kind, $terms
asked-terms = { $kind }: { $terms }
# $kind, $terms, $clause
asked-terms-and-rest = { $kind }: { $terms }; and the rest of { $clause }

## What puts a finding right, in the imperative

# $mark, $terms
remedy-see-to = see to { $mark }: { $terms }
# $deed, $wishes
remedy-or-bring = { $deed } or bring one with { $wishes }
# $deeds, $wishes
remedy-all-or-bring = { $deeds }, or bring one with { $wishes }
remedy-bring = bring { $what }
remedy-carry = carry { $what }
remedy-bring-another = bring another { $what }
remedy-carry-another = carry another { $what }
remedy-bring-one-more = bring one more { $what }
remedy-carry-one-more = carry one more { $what }
# $what, $others
remedy-or-others = { $what } - or { $others }
remedy-bring-clause = bring what the clause asks
# $number, $kind
remedy-bring-more = bring { $number } more: { $kind }
# $number, $types
remedy-bring-of = bring { $number } of these: { $types }
remedy-complete = complete the { $types }
# $types, $bring
remedy-complete-or = complete the { $types }, or { $bring }
remedy-lengthen = lengthen { $mark }
# $mark, $wishes
remedy-lengthen-to = lengthen { $mark } to { $wishes }
remedy-repair = repair { $mark }
# $mark, $vessel
remedy-fetch = fetch { $mark } back from { $vessel }
remedy-bring-aboard = bring { $mark } aboard
remedy-find-or-replace = find or replace { $mark }
remedy-inspect = have { $mark } inspected before sailing
# $part, $mark
remedy-second-part = bring a second { $part } for { $mark }
remedy-other-first = see to `{ $requirement }` first, or bring spares that fit the tool for it
remedy-certify-role = have the { $role } certified before sailing, or sail with one who is
remedy-certify-more = have { $number } more certified before sailing
# $piece, $term
remedy-land-or-change = land { $piece }, or change it for one that keeps: { $term }
remedy-land = land { $piece }, or change it for gear that keeps the rule

## The steps of the shortest way to ready, in the imperative

step-vessel = complete what is written down of the vessel
step-piece = see to { $piece }
step-see-above = { $step } (see above)
step-measure = measure { $mark }
step-inspect = have { $mark } inspected
step-carry-or-post = carry or post { $what }
step-certify-holder = have the holder of { $mark } certified
step-change = change { $mark }
step-replace = replace { $mark }
step-look-aboard = look aboard for { $things }, and write it down
step-or-other-type = or any other type of `{ $requirement }` that is not there yet
# $things, $terms, $requirement
step-to-count-too = { $things } - { $terms }, to count for `{ $requirement }` too
# $number, $what
step-number-of = { $number } of: { $what }
step-certify-role = have the { $role } certified, or sail with one who is
step-certify-one = have one more person certified
clash-two = { $requirements }: either can be met, not both
# $requirements, $met, $all
clash-many = { $requirements }: any { $met } of the { $all } can be met, not all
# $tools, $part
clash-part = { $tools } share { $part }, which serves one tool at a time
clash-tools = there is only { $tools }, and a tool counts once

## What serves

serves-twice = { $mark } (counts twice)
# $mark, $number, $all
serves-part = { $mark } ({ $number } of { $all })
# $mark, $number, $all
serves-part-twice = { $mark } ({ $number } of { $all }, counts twice)

## Until when and up to which freeboard a kit stays ready

limit-open = can't tell before the above is found out
until-none = not ready at departure
until-day = { $day }, that day included
# $day, $what
until-day-then = { $day }, that day included; then { $what }
until-no-end = no end: nothing aboard runs out
ends-certificate = the certificate of { $person } runs out
ends-tool = { $mark } goes out of date
ends-inspection = the inspection of { $mark } runs out
up-to-none = not ready at any freeboard
up-to-none-at-all = not ready at any freeboard, for the reasons above
up-to = a freeboard of { $figure }
# $figure, $requirements
up-to-then = a freeboard of { $figure }; above that, not met: { $requirements }
up-to-below = a freeboard of { $figure } only, which is less than this vessel has
# $figure, $requirements
up-to-below-then = a freeboard of { $figure } only, which is less than this vessel has; above that,
    not met: { $requirements }
up-to-any = any freeboard

## Beside pictures

hold = Drawn to one scale, each tool at the rail with 12 in (305 mm) of it held inboard. A pole
    slants 30 degrees from the vertical, a rope hangs straight (grip and slant: common practice, no
    source). How far a tool reaches when it is held so is no part of the verdict: the rule asks for
    its length.
hold-at-deck = The freeboard was taken from the working deck, so the tools are drawn at the deck;
    how high the rail stands above it is not written.
stub = Known, not encoded: this rule exists, but what it asks is not in this program, so nobody can
    tell here whether the kit keeps it.
not-asked = not asked: the requirement does not bind this vessel on its trip at its freeboard
turns-out-well = What is to be measured or looked up is taken to turn out well.
as-before = as before
as-before-and = as before, and { $requirements }
# $attribute, $figure
reach-aboard = { $attribute } { $figure } aboard
reach-asked = at least { $figure } asked
reach-short = { $figure } too short
# $down, $by
reach-above = held so, it reaches { $down } down: it ends { $by } above the water
reach-just = held so, it reaches { $down } down: it only just touches the water
# $down, $by
reach-into = held so, it reaches { $down } down: { $by } into the water
# $what, $freeboard
reach-at = { $what } at a freeboard of { $freeboard }
stretch-nowhere = at no freeboard at all
stretch-first = up to { $end }
stretch-at = at { $end }
stretch-next = above that, up to { $end }
picture-until-day = ready until { $day }
picture-until-no-end = ready, and nothing aboard runs out
# $what, $day
good-certificate = certificate of { $what }: good through { $day }
# $what, $day
good-inspection = inspection of { $what }: good through { $day }
# $what, $day
good-tool = { $what }: good through { $day } by its own date

## A fleet

# $ready, $not_ready, $cannot_tell
fleet-counts = { $ready } ready, { $not_ready } not ready, { $cannot_tell } can't tell
# $ready, $practice, $not_ready, $cannot_tell
fleet-counts-practice = { $ready } ready ({ $practice } by good practice only), { $not_ready } not
    ready, { $cannot_tell } can't tell
missed-not-met = not met on { $number }
missed-cannot-tell = can't tell on { $number }
# $worst, $vessel
short-by = too short by { $worst } ({ $vessel })
# $number, $worst, $vessel
short-on-by = too short on { $number } by { $worst } ({ $vessel })
# $median, $worst, $vessel
short-median = too short by { $median } in the median, { $worst } ({ $vessel }) at worst
# $number, $median, $worst, $vessel
short-on-median = too short on { $number } by { $median } in the median, { $worst } ({ $vessel }) at
    worst
# $mark, $day
lapse-tool = { $mark } is good through { $day }
# $mark, $day
lapse-inspection = the inspection of { $mark } is good through { $day }
# $person, $day
lapse-certificate = the certificate of { $person } is good through { $day }
after-lapse-not-asked = nothing asks for it after that
after-lapse-served = something else serves after it
after-lapse-open = what it serves is open by then anyway
after-lapse-advice = nothing else aboard serves after it; it is recommended only
after-lapse-decides = nothing else aboard serves after it
left-out-unknown = no vessel here is called `{ $vessel }`
# $vessel, $near
left-out-near = no vessel here is called `{ $vessel }`; is it of `{ $near }`? mend the name
# $vessel, $number
left-out-ambiguous = { $number } vessels here are called `{ $vessel }`; of which it is cannot be
    told
same-mark = the same mark, with nothing written that tells the tools apart, on vessels that are at
    sea on the same days: look whether it is one tool
# $number, $vessels
doubt-trips-over =
    { $number ->
        [one] 1 trip is over, its verdict speaks of the past: { $vessels }; `--on DATE` judges
            another day
       *[other] { $number } trips are over, their verdict speaks of the past: { $vessels };
            `--on DATE` judges another day
    }
# $register, $number, $files
doubt-same-register = the register number { $register } stands in { $number } files, a vessel may be
    counted twice: { $files }
