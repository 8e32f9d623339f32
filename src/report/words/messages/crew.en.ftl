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
notice-sheet-of-other-vessel-and-rules = the sheet of the inspection record of { $day } was printed
    from another state of the vessel's file and other rules
notice-sheet-of-other-vessel = the sheet of the inspection record of { $day } was printed from
    another state of the vessel's file
notice-sheet-of-other-rules = the sheet of the inspection record of { $day } was printed from other
    rules, or another revision of them
notice-too-many-facts = so many facts are missing that not every way in which they can turn out was
    tried: the verdict may be settled already
# $mark, $day, $remark
notice-remark = { $mark }, inspection record of { $day }: “{ $remark }”
# $mark, $day, $read
notice-mark-read-as = the mark of { $mark } was read as { $read } on { $day }
# $mark, $day
notice-unmarked = a tool without a mark was found on { $day }; here it is called { $mark }
# $mark, $day
notice-unlisted-mark = the inspection record of { $day } names { $mark }, which is not on the list,
    and does not say what it is
# $mark, $kinds
notice-kind-disputed = { $mark } is a { $kinds }, by one word or another
# $mark, $kinds
notice-kind-open = by its name { $mark } may be a { $kinds }
# $mark, $attribute, $counted, $overruled
notice-readings-differ = { $mark }, { $attribute }: measured { $counted }, which counts; { $overruled }
    does not
notice-no-return = no day of return is known: judged as a trip of one day

notice-ask-port-office = ask the port office which text binds on { $day }, and go by that
notice-trip-over = the trip was over on { $day }: the verdict speaks of the past
notice-list-old = the list was declared on { $day }, more than a year before departure
notice-other-day = `--on DATE` judges another day
notice-list-again = go through the kit again, and write the new day under `declared:`
notice-mend-spelling = mend the spelling if it is a slip (`kitmuster words` lists those that are
    known); else ask the port office which rule binds
notice-write-permits = write `permits:` into the vessel's file, `permits: []` if there is none
notice-write-gear = write `gear:` into the vessel's file, `gear: []` if there is none
notice-write-areas = write `areas:` into the vessel's file, `areas: []` if there is none
notice-write-fact = write it into the vessel's file
notice-mend-day = check a trip that departs on { $day } or later, or mend the day of the record
notice-check-rows = see that its rows still mean the same tools and figures; the record counts as it
    stands
notice-mend-mark = see which of the two marks is right, and write it on the tool or in the list
notice-give-mark = give it a mark, and list it
notice-list-mark = list it with its kind, or write the kind in the record
notice-settle-kind = look at it again, and write the right kind in the vessel's file

## Why a requirement is not met, or what is missing

# $broken, $all
reason-part-broken =
    { $broken ->
        [one] 1 of { $all } does not work
       *[other] { $broken } of { $all } do not work
    }
reason-nothing-aboard = no { $kinds } aboard
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
reason-one-of-these = would do, but is not enough for all of these: { $requirements }
reason-in-every-case = not met, whatever the missing facts turn out to be
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
reading-label = { $value } (label)
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
# $sure, $last
reason-expiry-disputed = good until { $sure } or until { $last }: its expiry was read in two ways
reason-kind-disputed = a { $kinds }, by one word or another
reason-kind-open = by its name it may be a { $kinds }
reason-certificate-disputed = the dates on the certificate of { $person } were read in two ways
reason-person-disputed = whether { $person } is aboard was told in two ways
# $reason, $readings
reason-overruled = { $reason }; { $readings } does not count against what was measured
reason-inspection-undated = no day of its last inspection is known
reason-acquired-unknown = no day of acquisition is known; tolerated only if before { $day }
reason-not-listed = no { $kinds } listed, but not everything aboard is listed
reason-spare-fit-unknown = nobody said which tool it fits
reason-certificate-undated = the certificate of { $person } has no date
reason-binding-unknown = whether this is asked of the vessel is open: { $unknown }
reason-hangs-on = met once `{ $requirement }` is settled
reason-too-many-ways = there are too many ways to share out the kit; the search was stopped
reason-too-many-facts = so many facts are missing that not every way in which they can turn out was
    tried; it may be settled already
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
unknown-role = a person aboard has a role by a name that is not known here
# $word, $others
unknown-which = `{ $word }` may be { $others }
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
find-role = write each role by a name that `kitmuster words` lists
# $word, $others
find-which = write which it is in place of `{ $word }`: { $others }
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
settle-expiry = read the expiry on { $mark } again
settle-kind = look at { $mark } again, and write down its kind
settle-inspection = look up when { $mark } was last inspected, or have it inspected
settle-acquired = look up when { $mark } was acquired
settle-not-listed = look aboard for: { $kinds }; write down what is there
settle-spare-fit = write down which tool { $mark } fits
settle-certificate-again = read the dates on the certificate of { $person } again
settle-person = find out whether { $person } is aboard
settle-certificate = look up the dates on the certificate of { $person }
# $requirement, $how
settle-other = first, for `{ $requirement }`: { $how }
settle-too-many-ways = list equal tools as one lot with a count, and leave out what is not for
    turtles
settle-too-many-facts = find out first what else is missing
settle-no-edition = ask the authority for the text of `{ $rule }` in force
settle-by-hand = go through the kit by hand, with the text of { $source }
# $piece, $what
settle-piece = write down of { $piece }: { $what }
settle-any-piece = look at { $piece } and write down what it is like
settle-if-asked = if it is asked: { $what }

## What a tool must be like

article-a = a { $thing }
article-an = an { $thing }
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
limit-left-open = not worked out: there are too many ways to go through
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

## The label of a fact, as it stands in front of its value

fact-audit-of = audit of
fact-file = file
fact-freeboard = freeboard
fact-trip = trip
fact-note = note:
fact-laid-over = laid over it:
fact-inspection-record = inspection record:
fact-ready-until = ready until
fact-good-up-to = good up to

## The check of a vessel

trip-as-planned = { $days } (as planned in its file)
only-measured = only figures that were measured are believed
freeboard-not-measured = not measured
# $low, $high
freeboard-between = { $low } to { $high }
# $reading, $next
freeboard-or = { $reading } or { $next }
# $readings, $stated
freeboard-overruled = { $readings } (measured; not { $stated })
# $readings, $station
freeboard-at-station = { $readings } at { $station }
# $readings, $place
freeboard-from = { $readings } from { $place }
# $place, $readings
freeboard-from-stations = from { $place }: { $readings }
check-rules = The rules that bind
check-by-practice = Good practice, no rule's verdict (`{ $profile }`).
check-base = note: `{ $profile }` is a list that others build on; it binds no vessel by itself.
# $source, $edition, $profile, $why
check-edition = { $source }, edition { $edition }, `{ $profile }`; { $why }
check-part-of-trip = judged for part of the trip: { $days }
check-not-encoded = known, not encoded: this rule exists, but what it asks is not in this program,
    so nobody can tell here whether the kit keeps it
check-clashes = Too few tools to go round
check-clashes-left-open = Which requirements want the same tools was not worked out to the end: there
    are too many ways to go through.
check-put-right = To put right ({ $number })
check-find-out = Not known: find out ({ $number })
check-in-order = In order ({ $number })
check-advice = Recommended (no part of the verdict)
check-follows = follows:
check-open-because = open because of it: { $requirements }
check-at-freeboard = at a freeboard of { $freeboard }
check-more-tools = { $number } more will not do either; `--format json` lists them
check-met-by = What is met, and by what
check-head-met = Met
check-head-by = By
check-head-clause = Clause
check-notes = notes on this profile: `kitmuster profiles { $profile }`
way-none = No set of changes was found that makes it ready.
way-left-open = The shortest way to ready was not worked out: there are too many ways to go
    through.
way-fewest = Shortest way to ready ({ $steps ->
        [one] 1 step
       *[other] { $steps } steps
    })
way-not-fewest = Shortest way to ready ({ $steps ->
        [one] 1 step
       *[other] { $steps } steps
    }; there may be a shorter way)
way-for = for: { $requirements }

## What the findings rest on

verified-read = the clause was read
verified-excerpt = seen in an excerpt
verified-inferred = concluded from what was read
verified-memory = from memory, the clause was not seen
verified-common-practice = common practice, no source
# $findings, $parts
rests-on = { $findings ->
        [one] 1 finding
       *[other] { $findings } findings
    }: { $parts }.
rests-on-read = { $number } on clauses that were read
rests-on-excerpt = { $number } on an excerpt
rests-on-inferred = { $number } on a conclusion from what was read
rests-on-memory = { $number } on memory
rests-on-common-practice = { $number } on common practice
rests-on-good-practice = What good practice asks is common practice in the trade, no published rule.

## Pictures and what stands beside them

picture-reach = Reach at the rail
picture-freeboard = Freeboard
picture-time = Time

hold = Drawn to one scale, each tool at the rail with 12 in (305 mm) of it held inboard. A pole
    slants 30 degrees from the vertical, a rope hangs straight (grip and slant: common practice, no
    source). How far a tool reaches when it is held so is no part of the verdict: the rule asks for
    its length.
hold-at-deck = The freeboard was taken from the working deck, so the tools are drawn at the deck;
    how high the rail stands above it is not written.
not-asked-short = not asked
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
picture-stretches = Ready at which freeboard
picture-own-unknown = The vessel's own freeboard, from { $place }, is not known
# $freeboard, $place
picture-own = The vessel's own freeboard: { $freeboard } from { $place }
# $low, $high, $place
picture-own-between = The vessel's own freeboards: { $low } to { $high } from { $place }
picture-good = Until when what serves is good
picture-trip = Trip { $days }
picture-endless = Without a last day: { $names }.
picture-all-endless = Nothing that serves has a last day.
reach-not-drawn-empty = Not drawn: nothing aboard is listed that could be held at the rail.
reach-not-drawn-station = Not drawn: the freeboard is not known at every station
reach-not-drawn-freeboard = Not drawn: the freeboard is not known
# $own, $rule
reach-not-drawn-place = Not drawn: the freeboard was taken from { $own }, and this rule counts from
    { $rule }
# $mark, $kind, $requirement
reach-held = { $mark }, { $kind }, held at the rail for: { $requirement }
# $kind, $requirement
reach-kind = { $kind }, for: { $requirement }
# $freeboard, $place
reach-freeboard = freeboard { $freeboard } from { $place }
# $low, $high, $place
reach-freeboard-between = freeboard { $low } to { $high } from { $place }

## Labels within a picture, in few letters

drawing-water = water
drawing-rail = rail
drawing-deck = working deck
drawing-to = to { $figure }
drawing-aboard = aboard { $figure }
drawing-aboard-not-measured = aboard not measured
drawing-asked = asked { $figure }
drawing-short = short { $figure }
drawing-own = own { $freeboard }
# $low, $high
drawing-own-between = own { $low } to { $high }
drawing-gives-out = gives out above { $freeboard }
drawing-trip = trip
drawing-to-before-trip = to { $day }, before the trip
drawing-to-during-trip = to { $day }, during the trip

## A fleet

audit-title = Fleet audit of { $day }
audit-aloud = AUDIT
# $vessels, $counts
audit-counts = { $vessels ->
        [one] 1 vessel
       *[other] { $vessels } vessels
    }: { $counts }
audit-on = on { $day }
audit-files-refused = { $files ->
        [one] 1 file
       *[other] { $files } files
    } could not be read; the rest is complete
audit-outside = { $vessels ->
        [one] 1 vessel
       *[other] { $vessels } vessels
    } outside the selection, not counted
# $shown, $vessels
audit-shown = { $shown } of { $vessels ->
        [one] 1 vessel
       *[other] { $vessels } vessels
    } shown
audit-only-troubles = more than { $most } vessels: only those that are not ready or of which nobody
    can tell have a page of their own here; `kitmuster check VESSEL.yaml --format html` makes that
    of any other
audit-more = and { $number } more; `--format json` has them all
audit-not-read = Not read ({ $number })
audit-vessels = Vessels
audit-no-vessel = none
# $days, $file
audit-trip = trip { $days }; { $file }
# $profile, $met
audit-profile = `{ $profile }`: { $met }
audit-not-encoded = `{ $profile }`: known, not encoded; can't tell
# $met, $all
audit-met = { $met } of { $all } met
# $met, $all, $advised, $of
audit-met-advised = { $met } of { $all } met, of what is recommended { $advised } of { $of }
audit-ready-no-end = ready until no end
audit-missed = Most often missed
# $days, $number
audit-lapses = Lapses within { $days } days ({ $number })
# $after, $days, $number
audit-lapses-after = Lapses after { $after } and within { $days } days ({ $number })
audit-marks = Marks on several vessels at sea together ({ $number })
audit-editions = Editions used
# $title, $profile
audit-edition = { $title } (`{ $profile }`)
# $title, $profile
audit-edition-of-practice = { $title } (`{ $profile }`; good practice, no rule)
audit-revision-not-encoded = { $revision }, not encoded
audit-head-profile = Profile
audit-head-edition = Edition
audit-head-source = Source
audit-head-encoding = Encoding
audit-head-vessels = Vessels
audit-head-vessel = Vessel
audit-matrix = Vessel by requirement
audit-no-profile = No profile judged a vessel.
# $source, $edition, $profile
audit-edition-from = { $source }, edition { $edition }; `{ $profile }`
audit-advice = { $requirement } (advice)
# $profile, $part
audit-matrix-part = Vessel by requirement, { $profile }, part { $part }
audit-back = Back to the fleet
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
left-out = record not laid over:
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
# $number, $vessels
doubt-lists-old =
    { $number ->
        [one] 1 list was declared more than a year before departure: { $vessels }; have it gone
            through again
       *[other] { $number } lists were declared more than a year before departure: { $vessels };
            have them gone through again
    }
# $register, $number, $files
doubt-same-register = the register number { $register } stands in { $number } files, a vessel may be
    counted twice: { $files }

## Ways of freeing a turtle, over a fleet

freeing-heading = Ways of freeing a turtle, situations counted
# $vessels, $parts
freeing-vessels = { $vessels ->
        [one] 1 vessel
       *[other] { $vessels } vessels
    }: { $parts }
freeing-vessels-first = { $number } with the first choice open in every situation
freeing-vessels-fallback = { $number } with only a fallback in some
freeing-vessels-unclear = { $number } of which nobody can tell in some
freeing-vessels-nothing = { $number } with no way at all in some
freeing-first = first choice { $number }
freeing-fallback = fallback { $number }
freeing-unclear = can't tell { $number }
freeing-nothing = nothing { $number }
# $step, $lifts
freeing-lift = { $step } (lifts { $lifts })
# $step, $lifts, $price
freeing-lift-price = { $step } (lifts { $lifts }); { $price }

## The list of profiles

profile-label-edition = edition
profile-label-in-force = in force
profile-label-source = source
profile-label-state = state
profile-label-note = note
# $edition, $rule
profile-edition = { $edition }, of the rule { $rule }
profile-always = always
profile-from = from { $day }
profile-until = until { $day }
# $revision, $requirements
profile-encoded = encoded, revision { $revision }, { $requirements } requirements
profile-not-encoded = known, not encoded: a vessel that it binds is can't tell
profile-good-practice = good practice, no rule
profile-base = a list that others build on; binds nobody by itself
profile-fallback = used where no rule names a vessel
profile-recommended = recommended, no part of a verdict
profile-note = note:

## The words that a vessel's file may use

words-title = Words for a vessel's file
words-how = An id, a name or a synonym will do for a kind, in any case, with blanks or hyphens.
    `kitmuster words KIND` tells how each of its keys is measured.
words-any-tool = Besides, any tool may have: mark, name, count, broken, condition, where, stowed,
    acquired, inspected, expires, conforms, parts, fits, changes, evidence, remark.
words-certificate-keys = A certificate has: kind, issued, expires, number.
# $class, $place
words-class = { $class }, { $place }
words-tools = Tools
words-spares = Spares
words-documents = Documents
words-gear = Fishing gear
words-certificates = Certificates
words-under-kit = under `kit:`
words-under-kit-fitting = under `kit:`, with `fits:` and the marks of the tools
words-under-documents = under `documents:`
words-under-hooks = under `hooks:` and `lines:`
words-under-certificates = under `certificates:` of one of the `people:`
words-permits = Permits, under `permits:`
words-gears = Gear, under `gear:`
words-areas = Areas, under `areas:`
words-features = Features of the vessel, under `features:`
words-changes = Changes to a tool, under `changes:`
words-change-all = every reading before it no longer counts
words-change-none = no reading is retired
words-change-some = readings before it no longer count: { $keys }
words-may-be-written = may be written: { $words }
words-written = written { $place }
words-no-keys = it has no keys of its own
# $name, $shape
words-named = { $name }: { $shape }
words-measured = how: { $how }
words-statement = no tape or eye can show it: a dated statement of conformity (`conforms:`) settles it
# $shape, $example
words-quantity = { $shape }, like `{ $example }`
words-length = a length
words-mass = a mass
words-angle = an angle
words-hook-size = a hook size
words-number = a number
words-yes-or-no = yes or no
words-any-text = any text
# $words, $word, $others
words-leaves-open = { $words }; `{ $word }` leaves open whether it is { $others }
words-also = also: { $words }
words-keys = keys: { $keys }
words-counts-as = counts as { $kinds }
words-may-be = may be { $others }; no rule can name it

## Which ways of freeing a turtle are open

options-ways-open = WAYS OPEN
options-first-choice = first choice
options-fallback = fallback
options-cannot-tell = CAN'T TELL whether any way is open
options-no-way = NO WAY AT ALL with this kit
options-not-at-every-rail = NO WAY AT EVERY RAIL with this kit
options-none-left = NO OTHER WAY with this kit, not even to cut the line
# $first, $all
options-worth = first choice open in { $first } of { $all } situations
options-only-a-fallback = only a fallback in { $number }
options-cannot-tell-in = can't tell in { $number }
options-nothing-in = nothing in { $number }
# $worth, $number
options-worth-left-out = { $worth } ({ $number } left out: no such hook aboard)
# $place, $group
options-group = { $place }: { $group }
options-with-any = With any of these
options-on-deck-with = on deck, { $title }
# $first, $next
options-then = { $first }, then { $next }
options-if-it-fails = if it fails:
options-yet = yet
# $station, $way
options-at-station = at { $station }: { $way }; bring it there
options-find-out-first = FIND OUT FIRST:
options-get-first = GET FIRST:
options-may-open = may open:
options-opens = opens:
options-short = short:
options-closed = closed:
options-not-told = can't tell:
options-left-out = left out, no such hook aboard:
options-no-such-hook = no such hook aboard
options-hooks-not-known = hooks aboard not known
options-hooks-not-said = which types of hook are aboard is not known for certain, so situations with
    each type are shown

## What lifts most

options-even-so = Even so:
options-lifts-most = Lifts most:
options-to-buy = To buy:
# $step, $lifts
options-lift = { $step } It lifts { $lifts }.
options-lifts = { $number ->
        [one] 1 situation
       *[other] { $number } situations
    }
options-lifts-to-first = { $number ->
        [one] 1 situation
       *[other] { $number } situations
    } to the first choice
# $number, $first
options-lifts-some-to-first = { $number ->
        [one] 1 situation
       *[other] { $number } situations
    }, { $first } of them to the first choice
options-no-lift = No single tool brought or mended is known to open a better choice; what is to be
    measured, mended or brought stands below.
options-no-offer = nothing in the catalogues does as much
# $description, $number, $supplier
options-offer = { $description }, { $number } of { $supplier }
# $price, $pack
options-price-of-pack = { $price } for a pack of { $pack }
# $price, $pieces
options-price-of-pieces = { $price } for { $pieces } of it
# $price, $packs, $pack
options-price-of-packs = { $price } for { $packs } packs of { $pack }
options-without-delivery = without delivery and tax
options-delivered-in = delivered in { $days ->
        [one] 1 day
       *[other] { $days } days
    }
options-price-through = price through { $day }

## What is closed, and what opens it

options-what-is-closed = What is closed, and what opens it
options-and = and: { $what }
options-why = why:
options-wanting-in = wanting in { $number ->
        [one] 1 situation
       *[other] { $number } situations
    }
options-too-short = short of the published length
options-leaders-only = cuts no line as thick as the thickest
options-unsure = reaches the water, the rest is not known
# $own, $most
options-rail-disputed = readings of { $own } dispute { $most }
# $own, $most
options-rail-higher = freeboard { $own }, more than { $most }
# $from, $asked
options-rail-from-elsewhere = the freeboard is taken from { $from }, not from { $asked }
options-rail-unknown = the freeboard of a hauling station is not known
options-measure-rail = measure the freeboard at every hauling station, from the top of the rail to
    the water
options-nothing-opens = no tool brought or mended opens it
options-nothing-opens-any = no tool brought or mended opens a way
options-rail-too-high = no tool opens it: the rail is too high
options-mind = Mind
options-take-care = Take care
options-how-judged = How this was judged
options-steps-on-card = The steps of each best way, of recovery and of release stand on the card that
    `--format html` prints; `--case WORDS` answers one case in five lines.
options-foot = An aid for trained crews, no legal advice and no advice on a single animal: training,
    permit, local law and a veterinarian's word come first. No technique is without danger for crew
    and animal.

## One case in five lines

options-case = Case:
options-case-better = Better:
options-case-never = Never:
options-case-care = Care:
# $condition, $text
options-if = If { $condition }: { $text }
# $case, $hooks
options-case-hooks = { $case } ({ $hooks })
# $way, $along
options-with-it = { $way }; with it, { $along }
# $way, $next
options-or-if-it-fails = { $way }; if it fails, { $next }
options-try-even-so = Try to { $way }, whatever was not measured.
options-nothing-better = nothing better
# $way, $steps
options-at-every-rail = { $way }, at every rail - first { $steps }
options-open-after-that = open after that
options-word-short = short
options-word-closed = closed
options-word-not-told = can't tell
options-in-harbour = in harbour, { $steps }
options-to-find-out = to find out, { $steps }
options-to-open-it = to open it, { $steps }
options-foreign-hook = can't tell: no such hook is aboard, so the wire of this one is not known;
    measure it against what the bolt cutters cut
options-taken-as = taken as { $word }
options-it-stays = it stays in the water
options-it = it { $says }
options-it-is = it is { $says }
options-it-is-a = it is a { $says }
options-hook-is = the hook is { $how }
options-point-and-barb = point and barb are { $says }

## The wall card

options-card = { $vessel }: freeing a turtle
options-card-for = how to free a turtle with this kit
options-card-freeboard = Freeboard
options-card-trip = Trip
options-card-figures = Figures
options-card-measured-only = only those that were measured are believed
options-card-mind = Mind:
options-card-stop-when = Stop when:
options-card-drawn-at = Drawn at { $place }.
options-card-never = Never
options-card-granted = What this card takes for granted
# $title, $id, $encoding, $source
options-card-practice = { $title } [{ $id }, encoding { $encoding }]; { $source }.
options-card-source = Source:
options-card-closed = Closed on this vessel, and what opens it
options-card-opens-it = Opens it:
options-card-not-told = can't tell, { $why }
options-card-left-out = Left out, no such hook aboard:
options-card-then = then
options-card-else = else
options-card-else-no-cut = else no line cut
options-card-by-hand = by hand
options-card-open-but-short = Open, but short:
options-card-better-but-closed = Better, but closed:
options-card-better-but-not-told = Better, but can't tell:
options-card-yet = Yet
options-card-measure-first = Measure first:
options-card-get-first = Get first:
options-card-not-known = Not known:
options-card-then-way = Then: { $way }.

## What the drawings of the card show

options-drawing-net = A net on a long handle is held under a turtle and lifted from the rail.
options-drawing-long-dehooker = A long pole reaches from the rail along the line; its open end sits
    in the bend of the hook.
options-drawing-inverted-v = One pole draws the line near the hook up into an inverted V, another
    holds a flipper.
options-drawing-long-cutter = A cutter on a long pole reaches from the rail down the line; its blade
    is at the eye of the hook.
options-drawing-gag = An open mouth from the front: a block keeps the jaws apart, and the point of
    the hook is turned to the side, away from the airway.
options-drawing-bolt-cutters = A hook whose point and barb show: bolt cutters cut it close to the
    skin.
options-drawing-push-through = First the point is pushed out through the skin; then point and barb
    are cut off and the rest is backed out.
options-drawing-recovery = A limp turtle lies belly down on a tire, its rear end raised, a damp cloth
    on the shell, a shade above.
options-drawing-release = A turtle slides head first into the water over the lowest part of the rail
    while the propeller stands still.

## The ways that are open, beside a check

options-summary = Ways of freeing a turtle
options-summary-pointer = with the flags of this check, tells which way is open in each, and what
    opens more.
options-summary-no-way = No way at all: { $situations }.
# $step, $lifts
options-summary-most = Most would change with one tool: { $step } (lifts { $lifts }).

## Papers for the deck

sheet-note = Note:
sheet-do = Do:

## A quote

quote-note = note:
quote-title = Quote
quote-title-for = Quote for { $customer }
quote-for-customer = for
quote-after-order = { $verdict } AFTER THIS ORDER
quote-nothing-needed = { $verdict }, NOTHING NEEDED
quote-nothing-ordered = { $verdict }, NOTHING ORDERED
# $ready, $all
quote-ready = { $ready } of { $all ->
        [one] 1 vessel
       *[other] { $all } vessels
    } ready
# $ready, $cost, $day
quote-there-by = { $ready }; { $cost }, there by { $day }
quote-for-an-order = for an order of
quote-order-of = order of
quote-none-before = none ready without it
quote-some-before = { $number } ready without it
quote-holds-until = prices hold until { $day }
quote-holds-no-end = no last day is stated for these prices
quote-with-recommended = what is recommended was to be met too
quote-cheapest = nothing cheaper does the same
quote-cheapest-of-one = nothing cheaper from one supplier does the same
quote-stopped = the search was stopped: a cheaper basket may exist, none below { $least }
quote-not-proved = NOT PROVED THE CHEAPEST
# $gap, $least
quote-how-far = the search was stopped. A cheaper basket may exist, by { $gap } at most: none below
    { $least } does the same; `--time-limit` gives the search longer
quote-nor-proved = { $told }. Nor is it proved that no more requirements can be met
quote-not-read = Not read ({ $number })
quote-for-the-others = { $number ->
        [one] 1 file
       *[other] { $number } files
    } could not be read; the quote is for the others
quote-for-other-files = the quote is for the other files
quote-record-not-laid = record not laid over:
quote-check-goods = Check the goods when they are delivered: count them, measure them and read their
    labels. This page rests on what the suppliers state; a tool counts once it is aboard.

## What each vessel gets

# $departure, $ordered
quote-left-before = leaves on { $departure }, before the day of the order, { $ordered }; nothing can be
    there in time
quote-undated = no day of departure is planned; taken to leave on { $departure }, the day of the order;
    `--on DATE` gives another
# $departure, $last, $ahead
quote-last-is-there = { $departure }; the last for it is there on { $last }, { $ahead }
quote-day-of-departure = the day of departure
quote-days-before = { $days ->
        [one] 1 day
       *[other] { $days } days
    } before departure
quote-days-after = { $days ->
        [one] 1 day
       *[other] { $days } days
    } after departure
# $file, $profiles
quote-judged-by = { $file }; judged by { $profiles }
quote-needs-nothing = { $vessel }; nothing needed
quote-none-needed = Nothing needed
quote-before = { $verdict } before this order
quote-before-either = { $verdict } before this order either
quote-leaves-on = leaves on { $days }
# $before, $days
quote-before-leaves-on = { $before }; leaves on { $days }
quote-pieces = { $number ->
        [one] 1 piece
       *[other] { $number } pieces
    }
quote-sets = { $number ->
        [one] 1 set
       *[other] { $number } sets
    }
# $pieces, $tool
quote-pieces-on = { $pieces } on { $tool }
quote-work-on = work on { $tool }
# $some, $all, $mark
quote-some-of-lot = { $some } of the { $all } { $mark }
# $day, $ahead
quote-there-on = there on { $day }, { $ahead }
# $day, $ahead
quote-done-on = done on { $day }, { $ahead }
quote-share = its share { $amount } before tax
quote-for = for:
quote-open = open: { $requirement }
quote-not-encoded = `{ $profile }`: known, not encoded; no order settles it
quote-stub = `{ $profile }` is known, not encoded: can't tell
quote-no-goods = no goods settle this
quote-nothing-near = nothing on offer is of a kind that would do
quote-would-do = would do by itself, once what stands in the way is settled
# $item, $supplier, $lacks
quote-nearest = nearest offer: { $item }, from { $supplier }: { $lacks }
quote-out-of-stock = out of stock
quote-too-few-in-stock = not enough in stock: { $packs ->
        [one] 1 pack
       *[other] { $packs } packs
    }
# $day, $days
quote-late = arrives on { $day }, { $days ->
        [one] 1 day
       *[other] { $days } days
    } after departure
quote-price-lapsed = the price held until { $day }

## The order as it goes to a supplier

quote-order-from = Order from { $supplier }
quote-all-orders = All orders together
# $packs, $price
quote-at-price = { $packs } at { $price }
# $packs, $pack, $price
quote-packs-at-price = { $packs ->
        [one] 1 pack
       *[other] { $packs } packs
    } of { $pack } at { $price }
quote-not-needed = no vessel needs it: it lifts the goods to where delivery is free, which makes the
    order cheaper
# $used, $spare
quote-left-over = { $used } used, { $spare } left over
quote-for-free-delivery = { $more ->
        [one] 1 of them only lifts
       *[other] { $more } of them only lift
    } the goods to free delivery
quote-least-sold = no fewer than { $least } are sold at once
quote-goods = goods
quote-delivery = delivery
quote-delivery-free-from = delivery, free from { $amount } of goods on
quote-tax = tax
quote-tax-of = tax, { $rate } of goods and delivery, rounded once
quote-total = total
# $day, $last
quote-all-there-until = all there on { $day }; these prices hold until { $last }
quote-all-there = all there on { $day }; no last day is stated for these prices
quote-terms = Terms: { $terms }
quote-terms-open = to be agreed with the supplier

## Beside the order

quote-one-supplier = Everything from one supplier
# $supplier, $ready, $all
quote-alone = { $supplier }: { $ready } of { $all ->
        [one] 1 vessel
       *[other] { $all } vessels
    } ready
quote-alone-open = { $number ->
        [one] 1 requirement
       *[other] { $number } requirements
    } open
# $told, $open
quote-alone-but = { $told }, { $open }
quote-alone-taken = { $told }; this quote
quote-before-you-order = Before you order
quote-measure-first = Measure or look up first; the order does not rely on these:
# $tools, $saves
quote-measured-none = If { $tools ->
        [one] it turns
       *[other] all of them turn
    } out well, nothing has to be ordered, which saves { $saves }.
# $tools, $total, $saves
quote-measured-less = If { $tools ->
        [one] it turns
       *[other] all of them turn
    } out well, the order comes to { $total }, which saves { $saves }.
quote-why = Why this basket
quote-no-basket = Nothing is ordered, so there is nothing to explain.
quote-together = it serves together with other items of this order
quote-why-for = for { $requirement }
# $requirement, $vessels
quote-why-for-on = for { $requirement }, on { $vessels }
# $why, $wrong
quote-why-was-open = { $why }; it was open: { $wrong }
quote-vessels = { $number ->
        [one] 1 vessel
       *[other] { $number } vessels
    }
# $item, $amount
quote-dearest = The dearest line is { $item }: { $amount } before tax.
quote-dearest-only = Nothing else on offer makes up for it.
# $total, $more
quote-dearest-saves = Without it the order would come to { $total }, { $more } more.
quote-dearest-same = Without it other goods would do the same for as much.
quote-costliest = The requirement that costs most is: { $requirement }.
quote-costliest-none = No single requirement makes the order dearer: without any one of them it would
    cost as much.
quote-costliest-all = Without it nothing would have to be ordered.
# $total, $less
quote-costliest-saves = If nothing asked for it, the order would come to { $total }, { $less } less.
quote-acceptance = Acceptance
quote-accept = The order above is placed as it stands, at these prices and terms.
quote-place-and-day = Place and day
quote-for-the-customer = For the customer
quote-for-the-supplier = For the supplier

## Heads of a quote's tables

quote-head-supplier = Supplier
quote-head-what = What
quote-head-packs = Packs and price
quote-head-sum = Sum
quote-head-total = Total
# $number, $rules
sheet-by-rules = { $number ->
        [one] rule { $rules }
       *[other] rules { $rules }
    }
# $number, $text
sheet-rule = rule { $number }: { $text }
# $title, $source, $edition
sheet-edition = { $title }: { $source }, edition { $edition }
# $title, $source, $edition
sheet-edition-of-practice = { $title }: { $source }, edition { $edition }; good practice, no rule
sheet-records = inspection records: { $files }
sheet-laid-over = laid over the list: { $files }
# $from, $to
sheet-trip = trip { $from } to { $to }
sheet-digest = sheet
sheet-stub = this rule binds or may bind, but what it asks is not in this program: this paper cannot
    tell what to look for under it.
sheet-recommended = recommended

## What is asked of a thing

sheet-any = any
sheet-yes = yes
sheet-no = no
sheet-yes-or-no = yes or no
sheet-yes-or-no-no = yes or no; it must be no
sheet-or = or:
sheet-or-else = or { $text }
# $first, $next
sheet-or-another = { $first }; or { $next }
sheet-must-be = must be { $text }
sheet-serves = serves { $condition }
sheet-serves-if-acquired = serves if acquired before { $day }
# $text, $clause
sheet-for-clause = { $text } (for { $clause })
sheet-at-every-freeboard = { $demand } at every freeboard
# $demand, $freeboard
sheet-demand-at = { $demand } (at { $freeboard })
sheet-asked-above = asked if the freeboard is more than { $length }
sheet-asked-from = asked if the freeboard is { $length } or more
# $asked, $near
sheet-near-above = { $asked } (for when you measure more than is listed; told within { $near } of it,
    our own choice)
sheet-freeboard-at-most = at a freeboard of { $length } or less
sheet-freeboard-at-least = at a freeboard of { $length } or more
sheet-freeboard-above = at a freeboard of more than { $length }
sheet-freeboard-below = at a freeboard of less than { $length }
sheet-with = with { $what }
sheet-without = without { $what }
sheet-with-aboard = with a working { $kind } aboard
sheet-without-aboard = without a working { $kind } aboard
sheet-in-area = in the { $area }
sheet-outside-area = outside the { $area }
# $first, $last
sheet-months = from { $first } to { $last }
sheet-month = { $month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
        [12] December
       *[other] another month
    }
# $low, $high
sheet-low-to-high = { $low } to { $high }
sheet-freeboard-from-rail = freeboard from the top of the rail to the water, where gear is hauled
sheet-freeboard-from-deck = freeboard from the working deck to the water, where gear is hauled

## The inspector's sheet

sheet-inspector = Deck sheet for the inspector: { $vessel }
sheet-inspector-title = Deck sheet, { $vessel }
sheet-how-to = Walk the rows in order. Boxes: write what you measure, with its unit. Squares: tick for
    yes, cross for no. Not looked at: leave empty. (a): how to measure, at the end. *: by label or
    dated statement. To key it in: `kitmuster sheet --record-form`.
sheet-worked-out = Reaches are worked out for the listed freeboard. If you measure another, key it in
    and go by the check, not by this paper.
sheet-no-freeboard = Measure the freeboard first: it is not known, so the figures that hang on it stand
    in the rule's own words.
sheet-at-station = at { $station }
sheet-listed-figure = listed: { $figure }
sheet-measured-from-rail = the list measured it from the top of the rail
sheet-measured-from-deck = the list measured it from the working deck
sheet-heaviest-hook = wire of the heaviest hook aboard
sheet-thickest-line = diameter of the thickest fishing line aboard
sheet-thickest-leader = diameter of the thickest leader aboard
sheet-there = there
sheet-works = works
sheet-how-many = how many
sheet-found-mark = mark of what was found
sheet-its-figures = its figures
sheet-person = person { $number }
sheet-name-of = name
sheet-number = number
sheet-issued-expires = issued, expires
sheet-inspector-signs = inspector, name and signature
sheet-vessel-signs = for the vessel, name and signature
sheet-day-hour-place = day, hour, place
sheet-remarks = remarks, by row number
sheet-how-to-measure = How to measure
sheet-not-asked = no rule here asks for it
sheet-not-encoded = what is asked of it is not in this program
sheet-for = for
sheet-for-these = for:
sheet-look-for = not on the list, or not enough of it: look for
# $wanting, $types
sheet-more-of = at least { $wanting } more of: { $types }
# $count, $kind
sheet-several-of = { $count } of: { $kind }
sheet-on-the-list = on the list: { $marks }
sheet-asked = asked { $condition }
sheet-inspection-due = inspection due every { $span }
sheet-no-place = the list names no place for these
sheet-papers = papers
sheet-gear = hooks and lines aboard
sheet-people = people and their certificates
sheet-fits-tool-of = fits the tool of: { $requirement }
sheet-counts-as = counts as the tool of { $clause }
# $all, $broken
sheet-listed-broken = listed: { $all }, { $broken } of them broken
sheet-listed-count = listed: { $count }
sheet-listed-ashore = listed as ashore
sheet-listed-lent = listed as lent to { $to }
# $to, $until
sheet-listed-lent-until = listed as lent to { $to } until { $until }
sheet-listed-lost = listed as lost
sheet-listed-nowhere = the list does not say where it is
sheet-listed-fitting = listed as fitting { $marks }
sheet-listed-good = listed as good through { $day }
sheet-listed-inspected = listed as inspected on { $day }
sheet-good-for = good for { $span } from its issue
sheet-part-of = part of { $tool }
# $types, $least
sheet-types-asked = { $types }; { $least ->
        [one] 1 type
       *[other] { $least } types
    } asked

## The skipper's checklist

sheet-skipper = Before you sail: { $vessel }
sheet-skipper-title = Before you sail, { $vessel }
sheet-clashes = Too few tools to go round
sheet-do-before = Do before leaving
sheet-nothing-to-do = Nothing that the rules above ask for is left to do.
sheet-not-settled = No step is known here that settles it: go by the notes above, and ask the port
    office.
sheet-no-way = no set of changes was found that makes it ready: ask the port office
sheet-turns-out-well = What is to be measured or looked up is taken to turn out well; check again once
    it is written down.
sheet-good-up-to = good up to: { $freeboard }
sheet-advice = Recommended
sheet-advice-only = Advice, no part of the verdict.
# $title, $days
sheet-part-of-trip = { $title }; for part of the trip: { $days }
sheet-runs-out = Runs out on this trip
sheet-nothing-lapses = Nothing on the list runs out before the return.
sheet-for-titles = for { $titles }
# $day, $back
sheet-met-until = met until { $day }; the trip goes on to { $back }
sheet-inspection-ran-out = its inspection ran out before the trip (good through { $day })
sheet-out-of-date = it went out of date before the trip (good through { $day })
# $kind, $person, $day
sheet-certificate-ran-out = the { $kind } of { $person } ran out before the trip (good through { $day })
# $kind, $person, $day
sheet-certificate-runs-out = the { $kind } of { $person } runs out during the trip (good through
    { $day })
sheet-by-eye = Look at by eye
sheet-by-eye-how = Tick what is in its place, whole and working; blades and points covered; each pole
    drawn out and locked to try it.
sheet-eyed-how-many = , how many:
sheet-met = Met, by what the list says
sheet-met-by-list = As it is written in the list; nobody looked for this paper.
sheet-met-by-list-and-records = As it is written in the list and in what is laid over it; nobody looked
    for this paper.
sheet-met-stated = "Stated, not measured": with measured figures alone it is not met; it rests on a
    figure that was stated or stands on a label.
sheet-met-by = by { $tools }
sheet-stated = stated, not measured

## Files to be filled in: the inspection record and the inventory

# $vessel, $digest
sheet-record = Inspection record of { $vessel }, sheet { $digest }.
sheet-written-with = It was written with this { $laid }.
sheet-key-in = Key in what stands on the paper, row by row, each figure with its unit; what stays empty
    adds nothing. What has no key here (hooks, certificates, a wheelhouse) goes into the vessel's
    file. Then: kitmuster check VESSEL.yaml --inspection THIS.yaml
sheet-day-of-walk = write the day of the walk, like 2026-12-01; without it the record is refused
sheet-inspector-name = the inspector's name
sheet-or-stated-or-label = or stated, or label
sheet-or-whole-kit = or whole kit, if all of it was seen
# $freeboard, $like
sheet-freeboard-like = { $freeboard }; { $like }
sheet-like-one-rail = like 4 ft 3 in
sheet-like-rail = like 4 ft 3 in, or 3 ft 10 in to 4 ft 2 in
sheet-like-deck = like 3 ft 2 in from the working deck
sheet-take-away = { $what }; take the # away and write it in its place:
# $row, $what
sheet-row-in-file = row { $row }, { $what }: a record has no place for it; it goes into the vessel's
    file
sheet-people-in-file = row { $row }: a record has no place for it; it goes into the vessel's file
sheet-missing = yes, if it is not there
sheet-condition = serviceable or broken
sheet-count-them = how many there are
sheet-label-day = the day on its label, like 2027-05-31
sheet-row-look-for = row { $row }, look for:
sheet-if-there = if it is there, take the # away and give it a mark:
# $rule, $profile
sheet-inventory = Inventory to fill in, for { $rule } [{ $profile }].
sheet-fill-in = Write behind each colon. What you do not know stays empty: it gives "can't tell", never
    "ready". A length has its unit: 6 ft 4 1/2 in, 1.83 m, 48 mm. Delete what is not aboard;
    `kitmuster words` lists all kinds and keys. Then: kitmuster check THIS.yaml
sheet-to-be-named = to be named
sheet-vessel-name = the vessel's name
sheet-register-number = its register number
sheet-who-fills-in = who fills this in
sheet-day-like = the day, like 2026-02-01
sheet-how-figures = measured, stated or label: how the figures came about
sheet-serviceable-if = serviceable, if every tool that does not say works
sheet-covers = write `whole kit` once everything aboard stands here
sheet-like-tags = like [{ $ids }]; [] if there is none
sheet-feature = yes or no: { $feature }
sheet-like-day = like 2026-03-02
sheet-kit = Each tool has the mark that is on it and on no other; its condition, serviceable or broken;
    where it is stowed.
sheet-documents = Each paper has a mark too; state: aboard, posted, copy or lost.
sheet-may-count = the tool of { $clause } may count for it too
sheet-no-part-of-verdict = recommended, no part of a verdict
# $least, $types
sheet-at-least-of = at least { $least } of: { $types }
sheet-or-instead = or instead, with the # taken away, { $tool }:
sheet-or-instead-of-it = or instead of it, with the # taken away:
sheet-marks-it-fits = marks of the tools that it fits
sheet-count-asked = { $count } are asked; write how many there are
sheet-aboard-once = aboard, once it is there
sheet-by-statement = or by statement (*)
sheet-hooks-like = circle hooks
sheet-lines-like = mainline
sheet-none-or-each-kind = [] if there are none; take the # away for each kind
sheet-each-person = take the # away for each person
sheet-statements = What no tape and no eye can show on deck is also settled by a dated statement that
    the tool conforms to the clause (*); write it under the tool:
