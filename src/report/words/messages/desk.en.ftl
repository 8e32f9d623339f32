### What is read at a desk, in English only: lint, schema, comparison of
### records, catalogues.

no-profile-known = no profile is known

## A file that is refused

problem-expected = expected { $what }
problem-mend = mend: { $how }
problem-more = { $number ->
        [one] and 1 more problem in this file
       *[other] and { $number } more problems in this file
    }
# $number, $so
problems = { $number ->
        [one] 1 problem
       *[other] { $number } problems
    }; { $so }
problems-nothing-checked = nothing was checked
problems-used-as-written = the rules are used as they are written

## The list of schemas

schema-vessel = a vessel's inventory
schema-inspection = an inspection record
schema-catalogue = a supplier's catalogue
schema-profile = a profile of rules
schema-vocabulary = the words
schema-techniques = how a turtle is freed
schema-check = what `check --format json` prints
schema-audit = what `audit --format json` prints
schema-audit-line = a line of `audit --format lines`
schema-record = an audit on record
schema-options = what `options --format json` prints
quote-schema = what `quote --format json` prints
schema-read = Files that are read
schema-written = JSON that is written
schema-how = `kitmuster schema NAME` prints the JSON Schema (2020-12) of one.

## Audits on record

record-whole = the whole record has the digest { $digest }, as it was made
# $found, $said
record-not-whole = the record was changed since it was made, be it the auditor, the day or what
    was found: its digest is { $found }, on record is { $said }
record-no-digest = the record has no digest of the whole; who audited and when is not covered
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
record-the-same = THE SAME
record-different = DIFFERENT
record-again = { $vessels ->
        [one] 1 vessel
       *[other] { $vessels } vessels
    } judged again from the record's own inputs
# $differences, $vessels
record-differences = { $differences ->
        [one] 1 difference
       *[other] { $differences } differences
    } on { $vessels ->
        [one] 1 vessel
       *[other] { $vessels } vessels
    } judged again from the record's own inputs
record-audit-of = audit of { $day }
# $day, $auditor
record-audit-of-by = audit of { $day } by { $auditor }
# $then, $now
record-programs = made by { $then }, verified by { $now }
record-inputs = { $files ->
        [one] 1 input
       *[other] { $files } inputs
    } as they were: every digest agrees
record-refused-then = { $files ->
        [one] 1 file
       *[other] { $files } files
    } refused then; their text is not on record, only what was said
record-what-differs = What differs: on record, then now
record-more = and { $number } more
record-refused-now = its text is refused now: { $why }
record-other-vessel = its name, register, port or trip is another
# $then, $now
record-notes = notes: { $then } → { $now }
# $then, $now
record-verdict = verdict: { $then } → { $now }
record-judged-then = `{ $profile }` judged it then, not now
record-judges-now = `{ $profile }` judges it now, not then
record-other-edition = `{ $profile }`: its edition, encoding or standing is another
# $profile, $then, $now
record-verdict-under = `{ $profile }`: { $then } → { $now }
# $profile, $then, $now
record-until = `{ $profile }`: ready until { $then } → { $now }
# $profile, $requirement, $then, $now
record-finding = `{ $profile }` { $requirement }: { $then } → { $now }
record-never = never
record-no-end = no end
record-newer = Rules on record that this program holds otherwise now
record-newer-no-fault = This is no fault of the record; it was judged by its own rules.
# $profile, $edition, $encoding, $now
record-newer-rule = `{ $profile }`: edition { $edition }, encoding { $encoding }; { $now }
record-newer-not-shipped = not shipped with this program
record-newer-same-name = the same by name, another text
# $edition, $encoding
record-newer-now = now edition { $edition }, encoding { $encoding }

## Two audits compared

compare-with = Compared with the audit of { $day }
# $day, $auditor
compare-with-by = Compared with the audit of { $day } by { $auditor }
# $day, $findings, $vessels
compare-in-one-line = compared with the audit of { $day }: { $findings }; { $vessels }
compare-as-before = as before
compare-old-file-refused = its old file is refused by today's rules: { $why }
compare-on-the-way = on the way: { $changes }
# $told, $code
compare-another-reason = { $told } (another reason than then, which was `{ $code }`)
compare-gone = gone
compare-verdict-then = then
compare-new-here = new here
compare-not-compared = not compared
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
# $now, $then
compare-renamed = met by { $now }, which was not listed then, while { $then } is gone without a word:
    it may be the same, so that nothing is mended
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

draft-heading = Under the draft `{ $profile }`
# $title, $edition, $days
draft-alone = { $title }, { $edition }; in force { $days }; no edition of its rule judged a vessel
# $title, $edition, $days, $profiles
draft-beside = { $title }, { $edition }; in force { $days }; beside { $profiles }
# $profile, $vessels, $counts
draft-in-one-line = under the draft `{ $profile }`: { $vessels ->
        [one] 1 vessel
       *[other] { $vessels } vessels
    }: { $counts }
# $change, $tools
draft-met-by = { $change } by { $tools }
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
figure-no-unit = a figure without its unit
figure-unknown-unit = `{ $unit }` is not a unit that is read here
figure-below-zero = a figure below zero
figure-unclear-comma = a comma before three digits could be a decimal or a thousands mark
figure-too-large = more than is reckoned with here (the most is { $most })
figure-too-fine = finer than { $step }, the smallest step that is kept exactly
figure-mixed = units out of order or mixed
figure-no-such-day = no such day in the calendar
figure-not-readable = not readable as { $what }
figure-length = a length with its unit, like `{ $example }` or `1.83 m`
figure-mass = a mass with its unit, like `{ $example }` or `45.4 kg`
figure-angle = an angle with its unit, like `{ $example }`
figure-hook-size = a trade hook size, like `{ $example }`
figure-count = a whole number, like `{ $example }`
figure-only = write `{ $text }`
# $one, $other
figure-length-unit = write `{ $one }` or `{ $other }`, whichever was measured
# $one, $other
figure-mass-unit = write `{ $one }` or `{ $other }`, whichever was weighed
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

## Why a command gives no result

command-did-you-mean = did you mean { $near }?
# $one, $next
command-near = { $one } or { $next }
command-formless = the result could not be put into this format: { $error }
command-no-json = the result has no JSON form: { $error }
command-put-techniques = put a file with `format: techniques/1` into the folder of requirements
command-no-such-day = { $error }; expected a day of the years 1900 to 2999
command-name-wanting = a name was expected
command-name-too-long = a name of at most { $most } characters was expected
command-name-one-of-them = name one of them, or the day with `--on`
command-words-lists = `kitmuster words` lists them
command-no-kind = no kind of tool is called `{ $name }`
command-written-over = the report would be written over `{ $file }`, which is read here
command-file-of-its-own = nothing was written; give `{ $flag }` a file of its own
command-no-profile = no profile `{ $id }`; `kitmuster profiles` lists them
# $id, $near
command-no-profile-but = no profile `{ $id }`; did you mean `{ $near }`?
command-no-inventory = no vessel's inventory in { $paths }
command-name-files = name files, or folders that hold files ending in `.yaml`
command-no-threads = no threads to work with: { $error }
command-no-gear = no gear is called `{ $gear }` here
command-give-one-of = give one of { $ids }
command-no-requirement = no profile has a requirement `{ $id }`
command-requirements-listed = `kitmuster profiles ID` lists the requirements of a profile
command-outcomes-format = `--outcomes` has no place in `--format { $format }`
command-outcomes-choose = choose `table`, `json` or `html`
command-no-outcomes = there is no file of techniques here, so nothing can be told of outcomes
command-needs-all = `{ $flag }` needs all vessels at once, `--format lines` holds a few at a
    time
command-another-format = choose another format
command-draft-or-profile = `--draft` judges beside what binds each vessel, `--profile` leaves
    that out
command-draft-alone = leave `--profile` away, or ask for the draft alone by `--profile`
command-both-name = `--record` and `--output` both name `{ $file }`
command-each-its-own = nothing was written; give each a file of its own
# $then, $date
command-record-later = the record is of { $then }, later than this audit of { $date }
command-compare-earlier = compare with an earlier audit, or give this one its day with `--date`
# $rule, $editions
command-rule-of-several = `{ $rule }` is a rule of several editions: { $editions }
command-name-draft = name one of them, or the draft's file
command-draft-is-list = the draft `{ $profile }` is a list that others build on; nobody can be
    judged by it
command-draft-not-encoded = the draft `{ $profile }` is not encoded; nobody can be judged by it
command-name-requirements = name a profile with requirements of its own
command-told-whole = { $told }; the table, the JSON and the HTML have it whole
command-record-too-large = the record would be larger than { $most } MiB and could not be read
    again
command-audit-in-parts = nothing was written; audit the fleet in parts, with `--port` for
    instance
command-case-or-card = `--case` and `--format html` do not go together
command-print-case = a card is of the whole kit; leave `--case` out, or print the case as
    `table` or `json`
command-no-choice = there is no file of techniques here, so there is nothing to choose from
command-case-unanswered = the file of techniques has no answer to this case
command-case-add = add a situation that fits it
# $error, $near
command-case-meant = { $error }; did you mean `{ $near }`?
command-case-words = words that can be said: { $facts }
command-case-say-one = say one of them - { $fact }
command-case-too-little = { $error }: too little was said
command-case-say-more = say more of this: { $facts }
command-no-schema-form = the schema has no form: { $error }
command-schemas-listed = `kitmuster schema` lists them
command-no-schema = there is no schema of `{ $name }`
command-refused-by-system = the system refused it
command-not-printed = the result could not be printed: { $why }
command-look-at-output = look where standard output leads to, or write to a file by `--output`
command-there-already = `{ $file }` is there already and may be filled in
command-insist = nothing was written; name another file, or insist with `--force`
# $file, $why
command-not-written = `{ $file }` could not be written: { $why }
command-name-writable = nothing was written; name a file in a folder that can be written to
command-dangling-link = it is a link that leads nowhere
command-is-folder = it is a folder
command-folder-name = the name of a folder was given
command-no-plain-file = it is no plain file
command-read-only-file = that file may only be read
command-no-folder = `{ $folder }` is no folder
command-folder-missing = there is no folder `{ $folder }`
command-part-no-folder = part of `{ $folder }` is no folder
command-folder-forbidden = writing to the folder `{ $folder }` is not allowed
command-folder-read-only = the folder `{ $folder }` can only be read
command-refused-in-folder = the system refused it in the folder `{ $folder }`
command-bad-name = the name is too long, or no name for a file
command-no-room = there is no room left
command-too-large = a file may not become that large here
# $back, $departure
command-return-first = the return on { $back } lies before the departure on { $departure }
command-return-later = give `--return` a day that is not before the day of `--on`
command-record-asks = it asks for the profile `{ $profile }`, which is not in it
# $file, $why
command-no-record = `{ $file }` is no record that can be used: { $why }
command-take-record = take the record as `kitmuster audit --record` wrote it
command-trust-or-catalogue = `--trust measured` and `--catalogue` do not go together
command-labels-not-believed = the figures of a catalogue are labels, which are not believed
    then; leave one out
command-catalogue-twice = the catalogue `{ $file }` is given twice
command-each-once = give each catalogue once
command-same-file = it is the same file as `{ $file }`; give it once
command-vessel-and-catalogue = `{ $file }` is given as a vessel and as a catalogue
command-vessels-first = name the vessels' inventories first, and suppliers' files after
    `--catalogue`
# $first, $second, $supplier
command-same-supplier = `{ $first }` and `{ $second }` are both catalogues of `{ $supplier }`
command-one-a-supplier = give one catalogue a supplier: delivery is charged once an order
# $first, $one, $second, $another
command-two-currencies = `{ $first }` asks { $one } and `{ $second }` asks { $another }
command-one-currency = give catalogues in one currency; what one is worth in another is not
    known here
command-not-quoted = nothing was quoted
command-no-vessel = no vessel was named
command-name-vessel = write `kitmuster sheet VESSEL.yaml`, or `--blank-vessel PROFILE` for a
    file to fill in
command-form-or-skipper = `--record-form` and `--for skipper` do not go together
command-form-of-inspector = an inspection record is keyed in from the inspector's sheet; leave
    one of them out
command-vessel-beside-blank = a vessel's file and `--blank-vessel` do not go together
command-flag-beside-blank = `{ $flag }` and `--blank-vessel` do not go together
command-blank-is-no-vessel = a blank inventory is for a profile and for no vessel yet; leave one
    of them out
command-not-encoded = `{ $profile }` is known, not encoded: what it asks is not in this program
command-list-by-hand = list the kit by hand, with the text of { $source }
# $rule, $editions
command-several-editions = `{ $rule }` has several editions: { $editions }
