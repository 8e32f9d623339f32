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
