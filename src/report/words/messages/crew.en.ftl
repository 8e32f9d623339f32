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
options-do = do:
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
options-case-do = Do:
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
quote-recommended = recommended
quote-open = open: { $requirement }
quote-stays-open = stays open:
quote-do = do:
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
