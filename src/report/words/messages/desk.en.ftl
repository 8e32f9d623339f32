### What is read at a desk, in English only: lint, schema, comparison of
### records, catalogues.

no-profile-known = no profile is known

## Audits on record

record-no-seal = A digest shows that an input was changed, not by whom; a record is no sealed
    document. Keep it where nobody else can write.
# $line, $column, $what
record-at = line { $line }, column { $column }: { $what }
# $found, $expected
record-schema = its schema is `{ $found }`; expected `{ $expected }`
# $file, $found, $expected
record-changed = the input `{ $file }` was changed: its digest is { $found }, expected { $expected }
record-no-codes = none
record-met = met
record-cannot-tell = can't tell
record-not-met = not met
record-not-asked = not asked
record-by-tools = by { $tools }
# $reason, $nanometres
record-reason-by = { $reason } by { $nanometres } nm
record-at-freeboard = at a freeboard of { $nanometres } nm
record-on-day = on { $day }
record-not-bound = not bound

## Two audits compared

compare-findings = findings: { $counts }
compare-no-findings = findings: none of a vessel in both audits was open then or is open now
compare-count-mended = { $number } mended
compare-count-settled = { $number } settled
compare-count-record-gone = { $number } without the record that found it
compare-count-new = { $number } newly open
compare-count-lapsed = { $number } open through the calendar
compare-count-opened-otherwise = { $number } opened without a change on the vessel
compare-count-closed-otherwise = { $number } closed without a mend
compare-count-passing = { $number } opened and closed in between
compare-count-still-open = { $number } still open
compare-vessels = vessels: { $both } in both audits
compare-count-gone = { $number } gone
compare-count-new-here = { $number } new here
compare-count-unclear = { $number } not compared: which is which cannot be told
compare-open-and-gone = { $number ->
        [one] 1 finding
       *[other] { $number } findings
    } open then on vessels that are gone; nobody looked again
compare-other-selection = other vessels were selected then; who is gone or new may be that
compare-rules-refused = the rules on record are refused by this program, so that what it judges
    otherwise cannot be told from what the rules ask otherwise: { $why }
compare-still-open = still open
compare-still-open-since = still open since { $day }
compare-untold-now = can't be told now, { $through }
compare-told-now = can be told now, { $through }
compare-newly-open = newly open
compare-open = open { $through }
compare-open-again = open again, first found open on { $day }
# $day, $through
compare-open-again-through = open again, first found open on { $day }, { $through }
compare-mended = mended
compare-settled = settled: it is met
compare-record-gone = not put right, only without the record that found it
compare-no-longer-asked = no longer asked, { $through }
compare-closed = closed { $through }
compare-passing = opened in between, closed again { $through }
compare-through-program = through this program
compare-through-encoding = through a corrected encoding
compare-through-rule-file = through other files of the rules
compare-through-asked = through what was asked
compare-through-edition = through another edition of the rule
compare-through-calendar = through the calendar
compare-through-vessel = through the vessel
compare-through-record = through an inspection record that is not laid over now
compare-through-untold = through something that cannot be told
# $from, $to, $through
compare-flip = { $from } to { $to } { $through }
# $before, $flip
compare-then = { $before }, then { $flip }
compare-as-a-whole = `{ $rule }` as a whole
compare-gone-no-file = no file of it here
compare-gone-refused = its file is refused now
compare-gone-may-be = its file may be `{ $file }`, which could not be read
compare-gone-outside = outside what is selected now
compare-new-refused = ; its file was refused then
compare-new-may-be = ; its file may be `{ $file }`, which could not be read then
# $id, $day
compare-open-since = `{ $id }`, open since { $day }
compare-record-missing = an inspection record that was missing then already is still not laid over;
    it had found: { $findings }
compare-record-changed = the inspection record `{ $file }` says something else now than it did then
compare-record-lost = the inspection record `{ $file }`, laid over then, is not laid over now;
    nothing is put right by that
# $then, $now, $why
compare-unclear = then { $then }; now { $now }: { $why }
compare-none-other = none other
# $register, $then, $now
compare-same-register = register { $register } stood in { $then ->
        [one] 1 file
       *[other] { $then } files
    } then and stands in { $now ->
        [one] 1 file
       *[other] { $now } files
    } now
compare-same-name = several are called so, with no register that tells them apart

## Under a draft

compare-draft-falls = { $number } fall
compare-draft-rises = { $number } rise
compare-draft-cannot-tell = { $number } can't be told
compare-draft-released = { $number } released
compare-draft-stays-otherwise = { $number } stay with other findings
compare-draft-unaffected = { $number } unaffected
compare-draft-not-bound = { $number } not bound
compare-draft-no-vessel = no vessel
compare-fate-falls = FALLS
compare-fate-rises = RISES
compare-fate-cannot-tell = CAN'T TELL
compare-fate-released = RELEASED
compare-fate-stays = STAYS
compare-bound-not-known = whether the draft binds it is not known
compare-bound-in-force-alone = the draft does not say whom it binds; bound by the edition in force
compare-bound-no = bound by the edition in force, not by the draft

## Files, and what stands in them

file-vessel = a vessel's inventory
file-inspection = an inspection record
file-catalogue = a supplier's catalogue
file-profile = a profile
file-vocabulary = a vocabulary
file-techniques = a file of techniques
form-nothing = nothing
form-text = plain text
form-list = a list
form-group = a group of `key: value` lines
did-you-mean = did you mean `{ $word }`?
class-tool = a tool
class-spare = a set of spares
class-document = a document
class-gear = fishing gear
class-certificate = a certificate
part-fact = fact
part-facts = facts
part-a-fact = a fact
part-situation = situation
part-situations = situations
part-a-situation = a situation
part-technique = technique
part-techniques = techniques
part-a-technique = a technique
part-capability = capability
part-capabilities = capabilities
part-a-capability = a capability
part-act = act
part-acts = acts
part-an-act = an act
part-card = card
part-cards = cards
part-a-card = a card
low-rail-example = write `at most { $length }`
figure-none = this cannot be read as a figure
figure-length = a length with its unit, like `{ $example }` or `1.83 m`
figure-mass = a mass with its unit, like `{ $example }` or `45.4 kg`
figure-angle = an angle with its unit, like `{ $example }`
figure-hook-size = a trade hook size, like `{ $example }`
figure-count = a whole number, like `{ $example }`
figure-last-unit = write the last unit too, like `{ $text } in`
figure-length-unit = write `{ $text } ft` or `{ $text } m`, whichever was measured
figure-mass-unit = write `{ $text } lb` or `{ $text } kg`, whichever was weighed
figure-angle-unit = write `{ $text } degrees`
figure-units-of-length = write it in ft and in, fathoms, m, cm or mm
figure-units-of-mass = write it in lb, kg or g
# $without, $point
figure-comma = write `{ $without }` or `{ $point }`, whichever is meant
figure-order = write the larger unit first and the smaller below one of the larger, of one system
figure-minus = write it without the minus sign
amount-none = this is not an amount of money
amount-below-zero = an amount below zero
amount-too-fine = finer than the smallest coin
amount = an amount, like `{ $example }`
# $currency, $example
amount-in = an amount in { $currency }, like `{ $example }`
amount-alone = write the number alone; the currency stands once, after `currency`
amount-comma = write it without a mark between thousands, like `{ $example }`
