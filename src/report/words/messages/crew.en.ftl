### Everything that skippers, crews and inspectors on deck read.
###
### A message is one paragraph, however it is broken into lines here. Figures,
### days and names arrive as finished text; a number that chooses between
### singular and plural names each class of the language. Of several arguments
### the comment above the message gives the order of the calls.

## Why a requirement is not met, or what is missing

reason-nothing-aboard = no { $kinds } aboard

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
options-in-water-comes-aboard = In the water, it can come aboard
options-in-water-stays = In the water, it stays there
options-on-deck = On deck
options-further = Further situations
options-along = Goes along with the others
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
options-card-with-any = With any of these

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
sheet-small-note = note:
sheet-do = Do:
sheet-small-do = do:

## A quote

quote-title = Quote
quote-title-for = Quote for { $customer }
quote-for-customer = for { $customer }
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
quote-for-an-order = for an order of { $day }
quote-order-of = order of { $day }
quote-none-before = none ready without it
quote-some-before = { $number } ready without it
quote-holds-until = prices hold until { $day }
quote-holds-no-end = no last day is stated for these prices
quote-no-last-day = no last day is stated
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
quote-none-needed = Nothing needed ({ $number })
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
quote-stays-open = stays open:
quote-not-encoded = known, not encoded; no order settles it
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
# $packs, $pack
quote-packs-of = { $packs } of { $pack }
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

## Heads of a quote's tables and facts

quote-head-customer = Customer
quote-head-supplier = Supplier
quote-head-order-of = Order of
quote-head-holds = Prices hold until
quote-head-total-with-tax = Total with tax
quote-head-asked = Asked
quote-head-leaves = Leaves
quote-head-verdict = Verdict
quote-head-file = File
quote-head-judged-by = Judged by
quote-head-number = Number
quote-head-what = What
quote-head-for-clause = For (clause)
quote-head-for = For
quote-head-before-tax = Before tax
quote-head-delivery = Delivery
quote-head-packs = Packs
quote-head-unit-price = Unit price
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
