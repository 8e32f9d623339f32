### What is wrong with a file, in English only: what it is (lower case, no full
### stop), what was expected instead, and how to mend it (an imperative).

## The file

no-such-file = there is no such file
    .mend = check the name, and the folder it is looked for in
may-not-be-read = this file may not be read
    .mend = check its permissions
path-through-file = part of this path is no folder
    .mend = check the name, and the folder it is looked for in
link-to-itself = this link leads back to itself
    .mend = remove the link
cannot-be-read = this file cannot be read
    .mend = check the name, and the disk that it lies on
is-folder = this is a folder
    .expected = a file
no-regular-file = this is a pipe, a device or the like
    .expected = a regular file
too-large = this file is too large
    .expected = at most { $most } KiB
long-too-large = this file is too large
    .expected = at most { $most } MiB
no-json = this does not begin like JSON
    .expected = `{"{"}` as the first character
no-utf8 = this file is not text in UTF-8
    .expected = text in UTF-8
    .mend = save it again with the encoding UTF-8
long-no-utf8 = this file is not text in UTF-8
    .expected = text in UTF-8
other-encoding = this file is written in { $encoding }
    .expected = text in UTF-8
    .mend = save it again with the encoding UTF-8
nul-character = a NUL character: this is no text file
empty = this file is empty
too-many-directives = too many lines that begin with `%`
    .expected = at most { $most } of them
    .mend = take them away; none is needed here

## The YAML

tab = this line cannot be read as YAML: a tab stands where only spaces may
    .mend = indent with spaces, never with tabs
quote-open = this line cannot be read as YAML: a quotation mark is opened and never closed
    .mend = close it, or put the whole text in the other kind of quotes
quote-open-before = this line cannot be read as YAML: a quotation mark is opened and never closed
    .mend = close it before this line
after-quote = this line cannot be read as YAML: something follows the closing quotation mark
    .mend = put the whole text in quotes, as in `'6 ft 4"'`
escape = this line cannot be read as YAML: a backslash in double quotes is followed by a letter
    that means nothing
    .mend = use single quotes, or write two backslashes
escape-incomplete = this line cannot be read as YAML: a backslash code in double quotes is
    incomplete
    .mend = use single quotes
escape-no-character = this line cannot be read as YAML: a backslash code in double quotes is no
    character
quote-indent = this line cannot be read as YAML: a quoted text goes on in a line that is not
    indented enough
    .mend = close the quotation mark, or indent the line
list-open = this line cannot be read as YAML: a square bracket is opened and not closed, or a
    comma is missing
    .mend = write a list like `[one, two]`
group-open = this line cannot be read as YAML: a brace is opened and not closed, or a comma is
    missing
    .mend = write a group like `{"{"} key: value, key: value {"}"}`
bracket-open-before = this line cannot be read as YAML: a bracket or brace is opened and not
    closed before this line
    .mend = close it, or indent the line
bracket-open = this line cannot be read as YAML: a bracket or brace is opened and not closed
key-in-list = this line cannot be read as YAML: a key where a list in brackets goes on: a bracket
    above is not closed, or a text with a colon has no quotes
    .mend = close the bracket above, or put the text in quotes
bracket-never-opened = this line cannot be read as YAML: a closing bracket or brace that was never
    opened
brackets-too-deep = this line cannot be read as YAML: brackets are nested too deep
stray-colon = this line cannot be read as YAML: a colon where none may stand
    .mend = indent the line like the ones before it, or put a text with a colon in quotes
stray-entry = this line cannot be read as YAML: a list entry where none may stand
    .mend = write the `-` on a line of its own level
entry-indent = this line cannot be read as YAML: this line is not indented like the list entries
    before it
    .mend = give every `-` of a list the same indent
key-indent = this line cannot be read as YAML: this line is not indented like the lines before it
    .mend = give every key of a group the same indent
indent = this line cannot be read as YAML: this line is not indented as it should be
    .mend = give lines of one group the same indent
no-colon = this line cannot be read as YAML: a key without its colon, or a line that is not
    indented enough
    .mend = write `key: value`, with a space after the colon
unknown-anchor = this line cannot be read as YAML: an `&` or `*` that names nothing
    .mend = put a text that begins so in quotes
unprintable = this line cannot be read as YAML: a character that cannot be printed
stray-sign = this line cannot be read as YAML: a text that begins with a sign that means something
    else in YAML
    .mend = put the text in quotes
no-yaml = this line cannot be read as YAML: something here is not as YAML wants it
    .mend = look for a missing quotation mark, bracket, colon or indent at or above it
unknown-yaml = this line cannot be read as YAML
nothing-written = nothing is written in this file
second-document = a second document in one file
    .mend = write it into a file of its own
too-many-values = this file holds more than { $most } values
aliases-too-long = the aliases here stand for more than { $most } KiB of text
    .mend = write each text where it belongs
too-deep = nested deeper than { $most } levels
key-no-text = a list or a group stands where a key should
    .mend = write a plain word before the colon
alias-of-nothing = an alias of nothing
alias-inside = an alias inside the value that it stands for

## The form

unreadable = this cannot be read as { $kind }
# $kind, $format
other-than-kind = this is not { $kind }
    .expected = a group of `key: value` lines
    .mend = write `format: { $format }` as the first line
no-format = `format` is missing
    .mend = write `format: { $format }` as the first line
# $is, $wanted
other-kind = this is { $is }
    .expected = { $wanted }
unknown-format = this format is not known here
    .expected = `{ $format }`
    .mend = correct the line, or use the version of this program that knows it
text-too-long = this text is too long
    .expected = at most { $most } characters
tagged = a YAML tag (`!…`) is not read here
    .mend = take the tag away
# $entries, $most
list-too-long = { $entries } entries in one list are too many
    .expected = at most { $most }
# $lines, $most
group-too-long = { $lines } lines in one group are too many
    .expected = at most { $most }
steers = a character that steers the screen instead of being seen
    .mend = take the character away
doubled = this key is written twice (first in line { $first })
    .mend = take one of the two away
unknown-key = no such key is known here
# $is, $wanted
wrong-form = { $is } stands here
    .expected = { $wanted }
# $is, $wanted, $like
wrong-form-text = { $is } stands here
    .expected = { $wanted }
    .mend = write it in brackets, like `[{ $like }]`
# $is, $wanted
wrong-form-group = { $is } stands here
    .expected = { $wanted }
    .mend = begin each entry with `- `
# $is, $wanted
wrong-form-nothing = { $is } stands here
    .expected = { $wanted }
    .mend = fill it in, or take the entry away

## Sets of files

more-problems = only the first { $told } problems are told; there are more
program-failed = the program failed over this file, so nothing is known of it
    .mend = this is a fault of the program: report it together with the file
link-into-itself = this link leads back into a folder that it lies in
    .mend = remove the link; everything else was read
entry-may-not-be-read = this may not be read
    .mend = check its permissions
nothing-there = there is nothing here
    .mend = check the name, or the link
entry-cannot-be-read = this cannot be read
no-vocabulary = there is no vocabulary
no-such-profile = there is no such profile
profile-twin = `{ $other }` has this id too
    .mend = give each edition an id of its own
editions-overlap = `{ $other }` is in force on some of these days too
    .expected = one edition of a rule on any day
    .mend = end the one on the day before the other begins
no-such-folder = there is no such folder
no-folder = this is not a folder
folder-cannot-be-read = this folder cannot be read
too-many-profiles = more than { $most } profiles in one folder
unknown-base = no profile of this id is known
bases-in-circle = profiles are built on each other in a circle
no-changed-id = `id` is missing
    .mend = name the requirement that changes
nothing-to-take-over = there is no requirement of this id to take over
change-moves = a change cannot move a requirement
nothing-to-drop = there is no such line to drop
# $vessel, $file
record-of-another = this inspection record is of another vessel
    .expected = `{ $vessel }`, the vessel of `{ $file }`
    .mend = name the record of this vessel, or write the name as the vessel does

## Values

no-day = this is not a day
    .expected = a calendar day
    .mend = write year, month and day, like `2026-03-09`
no-such-day = no such day in the calendar
    .expected = a day of the years 1900 to 2999
    .mend = write year, month and day, like `2026-03-09`
span-reversed = the last day lies before the first
    .expected = a day on or after { $first }
return-before-departure = the return lies before the departure
    .expected = a day on or after { $departure }
expires-before-issue = it expires before it was issued
    .expected = a day on or after { $issue }
no-interval = this is not an interval
    .expected = a number of days, weeks, months or years
    .mend = write it like `12 months`
no-flag = neither yes nor no
    .expected = `yes` or `no`
unknown-word = this word is not known here
# $least, $most
out-of-range = out of range
    .expected = a whole number from { $least } to { $most }
# $least, $most
no-whole-number = this is not a whole number
    .expected = a whole number from { $least } to { $most }
may-be-several = this word may be any of several kinds, and one of them is wanted here
unknown-kind = no kind of this name is known
    .expected = a kind of the vocabulary, by id, name or synonym
lead-out-of-range = out of range
    .expected = calendar days from 0 to { $most }, like `3 days`
no-lead = this is not a number of days
    .expected = calendar days from 0 to { $most }, like `3 days`
# $number, $most
lead-without-unit = this is not a number of days
    .expected = calendar days from 0 to { $most }, like `3 days`
    .mend = write `{ $number } days`
empty-tag = an empty tag
tag-slip = this tag is not known, and very near to one that is
bad-id = this is not an id
    .expected = lower-case letters, digits and hyphens
no-governing-text = the text in the governing language is missing
    .expected = a line that begins with `{ $language }:`
no-limit = this is not a limit
    .expected = a phrase that begins with { $openings }
# $openings, $text
limit-without-opening = this is not a limit
    .expected = a phrase that begins with { $openings }
    .mend = write `at least { $text }` or the like
after-bound = nothing is expected after the bound, but `{ $rest }`
range-reversed = the range ends below its beginning
    .mend = write the smaller figure first
about-reversed = the range ends below its beginning
no-margin = an approximate limit without its margin
    .expected = `about F, within F` or `about F to F, within F`
    .mend = write `, within` and the margin after it
# $link, $shape
no-link = `{ $link }` is missing
    .expected = `{ $shape }`
bound-too-deep = `the greater of` is nested too deep
no-percentage = { $error }
    .expected = a percentage, like `150%`
nought-percent = nought percent limits nothing
percentage-of-else = a percentage of something that is not measured on a vessel
    .expected = a percentage of { $bases }
# $base, $example
base-is-length = `{ $base }` is a length, but this attribute is told like `{ $example }`
bracket-not-closed = a bracket is opened and not closed
no-length-here = this is not a length

## Vessels and records

no-vessel-name = `name` is missing
    .mend = write the vessel's name
no-kit = `kit` is missing
    .mend = list the tools, or write `kit: []` if there is none aboard
# $tools, $most
too-many-tools = { $tools } tools and documents are too many
    .expected = at most { $most } on a vessel
    .mend = write equal tools as one line with a `count`
no-mark = `mark` is missing
    .mend = write a mark that is on the tool and on no other, like `LC-1`
mark-twin = another tool has this mark too
    .expected = a mark other than that of { $other }
    .mend = give each tool a mark of its own, or write equal ones with a `count`
unknown-mark = no tool of the vessel has this mark
no-kind = `kind` is missing
    .mend = write the kind, like `pliers`
no-change-day = `on` is missing
    .mend = write the day of the change
no-borrower = `lent to` is missing
    .mend = write the vessel that has it
no-statement-clause = `to` is missing
    .mend = write the clause, like `"Appendix F, A.1"`
no-statement-day = `on` is missing
    .mend = write the day of the statement
no-change-word = `what` is missing
    .mend = write what was done, like `lengthened`
unknown-change = no such change is known
lost-here = what is lost has no place here
    .expected = `aboard`, `posted` or `copy`
feature-twice = this feature is written twice, in other words
    .mend = leave one out
unknown-feature = no feature of a vessel has this name
no-person-name = `name` is missing
    .mend = write the person's name
role-slip = this role is very near to a known one
no-certificate-kind = `kind` is missing
    .mend = write the kind of certificate
no-kind-of-gear = the vocabulary has no kind `{ $kind }` to keep these under
empty-gear = nothing is said of this piece of gear
    .mend = fill it in, or take the entry away
attribute-twice = this attribute is written twice
    .mend = write several readings of one attribute as a list
# $kind, $own
no-attribute-of-kind = `{ $kind }` has no such attribute
    .expected = one of its attributes: { $own }
unknown-key-or-attribute = no such key or attribute is known here
    .expected = one of its attributes: { $own }
no-tape-error = only a measured quantity has a tape error
unknown-choice = `{ $attribute }` knows no such word
value-beside-stations = `value` cannot stand beside `stations`
    .mend = write the figure under one of the stations
empty-station = a station without its freeboard
    .mend = measure it, or take the station away if no gear is hauled there
mixed-freeboards = freeboards from the rail and from the deck are mixed
    .mend = give all of them from one place
of-whole-freeboard = `{ $key }` cannot stand here
    .mend = write it directly under `freeboard`
freeboard-zero = a freeboard of zero
    .expected = the distance down to the water
    .mend = measure it, or write `unknown`
freeboard-reversed = the range ends below its beginning
    .mend = write the lower freeboard first
no-record-vessel = `vessel` is missing
    .mend = write the name of the vessel
no-record-day = `on` is missing
    .mend = write the day of the walk
empty-row = this row was left empty
    .expected = what was found, since the record covers everything of the kind
    .mend = write `missing: yes`, or its `condition`, or a figure
# $tools, $most
too-many-found = { $tools } tools are too many
    .expected = at most { $most } in a record
found-twice = this tool is written twice in the record
    .expected = a mark other than that of { $other }
    .mend = write what was put right under `mended` of the first
no-found-mark = `mark` is missing
    .mend = write the tool's mark; one that has none is written with its `kind`
lost-and-there = one entry says that it is lost and that it is there
    .mend = write what was found that day
missing-yet-read = a missing tool was measured or mended
    .mend = take away what says that it is missing, or the readings

## Catalogues

no-supplier = `supplier` is missing
    .mend = write the supplier's name
no-currency = `currency` is missing
    .mend = write the code of the currency, like `USD`
unknown-currency = no currency with a coin has this code
    .expected = a code of three letters by ISO 4217
    .mend = write it like `USD`
no-tax = `tax` is missing
    .mend = write `tax: 0%` if none is charged
tax-too-high = more than any tax is
    .expected = a percentage from `0%` to below `100%`, like `7.25%`
tax-no-percentage = this is not a percentage
    .expected = a percentage from `0%` to below `100%`, like `7.25%`
tax-without-sign = this is not a percentage
    .expected = a percentage from `0%` to below `100%`, like `7.25%`
    .mend = write `{ $text }%`
tax-no-figure = { $error }
    .expected = a percentage from `0%` to below `100%`, like `7.25%`
no-delivery = `delivery` is missing
    .mend = write `delivery: 0` if nothing is charged
no-charge = `charge` is missing
    .mend = write what delivery costs, once an order
no-items = `items` is missing
    .mend = list what is sold
# $items, $most
too-many-items = { $items } items are too many
    .expected = at most { $most } in a catalogue
    .mend = split it into several catalogues
no-number = `number` is missing
    .mend = write the number under which it is ordered, like `TS-110`
no-description = `description` is missing
    .mend = write what it is, in a few words
no-price = `price` is missing
    .mend = write the price of a pack, before tax
price-of-nothing = a price of nothing
    .expected = the price of a pack, above zero
no-lead-time = `lead` is missing
    .mend = write how long it takes to come, like `3 days`, here or once at the top
sold-with-mark = what is sold has no such key
    .mend = take it away; its mark is the item's number
sold-with-condition = what is sold has no such key
    .mend = take it away; what is sold is serviceable
sold-with-place = what is sold has no such key
    .mend = take it away; it comes aboard with the delivery
sold-with-day = what is sold has no such key
    .mend = take it away; it is acquired with the delivery
sold-with-expiry = what is sold has no such key
    .mend = write how long it is good from its delivery on, like `lasts: 24 months`
sold-with-changes = what is sold has no such key
    .mend = write the figures as they are when it is delivered
sold-with-remark = what is sold has no such key
    .mend = write it in the item's `description`
empty-set = a set without tools
    .expected = from 1 to { $most } tools
    .mend = write equal tools as one line with a `count`
# $tools, $most
set-too-large = { $tools } tools in a set are too many
    .expected = from 1 to { $most } tools
    .mend = write equal tools as one line with a `count`
certificate-sold = a certificate is earned, not sold
    .expected = a tool, a set of spares or a document
gear-sold = fishing gear is not sold here
    .expected = a tool, a set of spares or a document
gives-two = an item gives one thing only
    .expected = one of `tool`, `tools`, `lengthens` and `service`
    .mend = write two items, or the tools of a set under `tools`
gives-nothing = nothing says what this item gives
    .expected = one of `tool`, `tools`, `lengthens` and `service`
number-twin = another item has this number too
    .mend = give each item a number of its own
number-of-set-tool = a tool of the set { $set } is marked so
    .mend = give this item or the set another number
no-fits = `fits` is missing
    .mend = write the numbers of the items, or the kinds of tool, that they fit
fits-without-spares = only spares fit another tool
    .mend = take it away, or write the kind of the spares
fits-no-tool = this item gives no tool that spares could fit
    .expected = the number of an item that is a tool
fits-unknown = neither an item of this catalogue nor a kind of tool
    .expected = the number of an item, or a kind by id, name or synonym
not-lengthened = a tool of this kind cannot be lengthened
    .expected = a kind with a handle, a pole, a rope or another length to it
no-added-length = `by` is missing
    .mend = write by how much, like `2 ft`
length-of-nothing = a length of nothing
    .expected = by how much it lengthens a tool, like `2 ft`
no-service = `does` is missing
    .mend = write `inspection`, `repair` or `sharpening`, in brackets
no-kinds = `kinds` is missing
    .mend = write the kinds of tool that it is for, in brackets

## Profiles

no-source = `source` is missing
    .mend = write the publication that this profile encodes
no-profile-id = `id` is missing
    .mend = write the id of this edition, like `example-2024`
no-rule = `rule` is missing
    .mend = write the id of the rule of which this is an edition
no-edition = `edition` is missing
    .mend = write the law's edition, in words
no-rule-title = `title` is missing
    .mend = write what the rule is called
# $requirements, $most
too-many-requirements = { $requirements } requirements are too many
    .expected = at most { $most } in a profile
requirement-twin = two requirements have this id
    .mend = give one of them another id
met-otherwise = only a number of one kind or of alternatives can be met so
no-single-tool = `{ $other }` has no single tool that could serve
met-in-turn = `{ $other }` is met by this one in turn
nothing-to-share = no tool can be shared with `{ $other }`
wants-no-tool = `{ $other }` wants no tool
no-requirements = a profile without requirements
    .mend = list them, or write `encoded: no` if the rule is known but not encoded
requirements-not-encoded = requirements of a rule that is not encoded
    .mend = take them away, or take `encoded: no` away
stub-binds-nobody = a stub that binds nobody
    .mend = write whom the rule binds
base-binds-nobody = a list that others build on binds nobody
    .mend = take `base` or `binds` away
unknown-tag = the vocabulary has no such tag
    .mend = write one of these, or add it to a `vocabulary.yaml` given with `--requirements`
no-requirement-id = `id` is missing
    .mend = write an id, unique in the profile
no-requirement-title = `title` is missing
    .mend = write what the rule calls it
no-clause = `clause` is missing
    .mend = write the clause of the source
no-verified = `verified` is missing
    .mend = write `read`, `excerpt`, `inferred`, `memory` or `common practice`
empty-group = an empty group always holds
unknown-requirement = no requirement of this id is in the profile
no-deemed = `requirement` is missing
    .mend = write the id of the requirement
no-groups = an empty list of groups
    .expected = at least one group of lines
nothing-said-of = nothing is said of `{ $key }`
    .mend = write what is asked after the colon, or take the line away
no-months = these are not months
    .expected = two months of the year, like `January to June`
unknown-condition = no condition of this name is known
no-acquisition-day = this is not a day of acquisition
    .expected = `before` and a day, like `before 2019-06-01`
no-attribute-of-kinds = { $kinds } has no such attribute in the vocabulary
unknown-attribute = no attribute of this id is known
no-threshold = this is not a freeboard threshold
    .expected = `more than`, `less than`, `at most` or `at least` and a length
    .mend = write it like `more than 4 ft` or `4 ft or less`
unclear-need = it is not clear what this requirement wants
    .expected = `carry` with `with`, `one of` or `types`; `certificate` with `held by`; or
        `every` with `with` or `one of`
# $key, $beside
keys-clash = `{ $key }` cannot stand beside `{ $beside }`
    .expected = `carry` with `with`, `one of` or `types`; `certificate` with `held by`; or
        `every` with `with` or `one of`
spares-for-nothing = spares for what is not said
    .mend = write `spare for:` and the requirement whose tool they are for
no-spare = what is carried here is no spare
    .expected = a kind of the class `spare`
no-number-of-types = `types` is written, but not how many of them
    .expected = a number of different types, like `2 different types`
too-few-types = more types are asked for than there are
    .expected = at most { $types }
no-type-name = `type` is missing
    .mend = write the name of the type
empty-set-of = an empty set
kind-beside-one-of = a kind beside `one of`
    .expected = only a number, like `1`; the kinds stand under `one of`
no-kind-carried = of which kind is not said
    .expected = a number and a kind, like `2 pliers`
    .mend = write the kind after the number, or list alternatives under `one of`
no-alternative = no alternative is listed
no-alternative-kind = `kind` is missing
    .mend = write the kind of this alternative
no-tests-of-piece = `with` is missing
    .mend = write what such a piece must be like
no-tests-of-every = `with` is missing
    .mend = write what every piece must be like
kind-beside-every = another kind than after `every`
    .mend = take the line away
no-holders = `held by` is missing
    .mend = write roles like `[owner, operator]`, or `2 people`
no-carry = `carry` is missing
    .mend = write a number and a kind, like `1 pliers`
no-number-carried = how many is not said
    .expected = a number and a kind
    .mend = write it like `1 { $text }`
no-role = no role is listed

## Slips of a profile

binds-never = no vessel can be bound: these conditions exclude each other
    .mend = take one away, or write each below `any of`
when-never = this requirement is never asked: its conditions exclude each other
    .mend = take one away, or write each below `any of`
never-asked = this requirement is never asked: what its profile's `binds`, or the
    requirement that it is a spare for, says excludes its conditions
    .mend = take the requirement or the condition away
unless-always = this requirement is never asked: its exceptions hold wherever its
    conditions do
    .mend = narrow `unless`, or take the requirement away
unless-never = an exception that never holds where its requirement is asked
    .mend = take it away, or look which of the two conditions is meant
alternative-never = an alternative that is never open: its conditions exclude each
    other or those of its requirement
    .mend = take it away, or look which condition is meant
# $limit, $beside
freeboard-gap = at exactly { $limit } neither this nor `{ $beside }` holds
    .mend = write `{ $limit } or less` or `{ $limit } or more` on one side, as the rule says
# $limit, $beside
freeboard-overlap = at exactly { $limit } both this and `{ $beside }` hold
    .mend = write `less than { $limit }` or `more than { $limit }` on one side, as the rule says

## The vocabulary

not-lengthenable = only a length can be lengthened
not-in-choice = no such word is in the choice
no-quantity = `quantity` is missing
    .mend = write `quantity: length` or the like
words-without-choice = only a choice has words
    .mend = write `quantity: choice`, or take the words away
no-choice-words = `words` is missing
    .mend = list the words of the choice
kind-name-twin = the kind `{ $other }` has this name too
    .expected = a name that means one kind only
may-be-one = a word that may be several kinds names fewer than two
    .mend = list them, or write the word under `also` of the only one
unknown-wider-tag = no tag of this id is known
no-attribute-list = this is not a list of attributes
    .expected = a list like `[handle]`, or `all`

## Techniques

# $entries, $most
too-many-entries = { $entries } entries are too many
    .expected = at most { $most }
no-part-id = `{ $key }` is missing
    .mend = write one of lower-case letters, digits and hyphens after `{ $key }:`
part-twin = two { $parts } have this id
    .expected = an id that stands for one of them only
    .mend = give one of them another id
# $one, $any
unknown-part = no { $one } of this id is in the file
    .expected = the id of { $any }
part-named-twice = this is named twice
    .expected = each { $part } once
    .mend = take one of them away
nothing-said = nothing is said here
no-steps = `steps` is missing
    .mend = write what to do, a short line for each step
no-line-text = `says` is missing
    .mend = write the line
no-cited-clause = `clause` is missing
    .mend = write the source and its clause
no-practice-source = `source` is missing
    .mend = write what it stands on, like `common practice`
no-part-title = `title` is missing
    .mend = write what it is called
no-act-text = `{ $act }` is missing
    .mend = write it in words
no-never-text = `says` is missing
    .mend = write what is never done
no-never-cases = `when` is missing
    .mend = write in which cases, or `when: {"{"}{"}"}` for all of them
capability-level = `{ $key }` has no place in a capability
    .expected = tools alone, since a capability binds nobody, so it has no level
    .mend = take the line away
capability-formerly = `{ $key }` has no place in a capability
    .expected = tools alone, since no record names a capability by an earlier id
    .mend = take the line away
capability-by-day = `{ $key }` has no place in a capability
    .expected = tools alone, since a capability is tried on one kit, whatever the day
    .mend = take the line away
capability-by-vessel = `{ $key }` has no place in a capability
    .expected = tools alone, since a capability is the same on every vessel; situations say when
        it is needed
    .mend = take the line away
capability-inspected = `{ $key }` has no place in a capability
    .expected = tools alone, since when a tool was last inspected is the rule's business
    .mend = take the line away
capability-of-spares = `{ $key }` has no place in a capability
    .expected = tools alone, since spares free no turtle
    .mend = take the line away
capability-without-tools = `{ $key }` has no place in a capability
    .expected = tools alone, since a capability is given by tools of the kit
    .mend = take the line away
capability-by-other-tool = `{ $key }` has no place in a capability
    .expected = tools alone, since a technique uses each tool once, and each tool by what it is
        like
    .mend = take the line away
capability-placed = `{ $key }` has no place in a capability
    .expected = tools alone, since a capability stands where it is written
    .mend = take the line away
no-low-rail = `freeboard` is missing
    .mend = write `at most` and a length, like `at most 2 ft`
low-rail-other-limit = a low rail is told by its greatest freeboard alone
    .expected = `at most` and a length, like `at most 2 ft`
low-rail-of-zero = no rail lies on the water
    .expected = `at most` and a length, like `at most 2 ft`
no-situations = no situation is written
    .mend = write each with `when` and its choices
order-of-along = `goes before` has no place here
    .expected = nothing, since this goes along with whatever situation fits
    .mend = take the line away
no-situation-title = `title` is missing
    .mend = write what it is
no-situation-cases = `when` is missing
    .mend = write which cases it is
no-choices = `choices` is missing
    .mend = write techniques, from the best to the last
choice-twice = this choice stands here twice
    .expected = each choice once, from the best to the last
    .mend = take one of them away
choice-begins-then = a choice cannot begin with `then`
    .expected = a technique, or several like `dipnet, then cut-free-on-deck`
    .mend = put the whole choice in quotation marks, or on a line of its own
choice-gap = a technique is missing in this choice
technique-twice = a technique stands in this choice twice
    .expected = each technique once in a choice
no-facts = no fact is written
    .mend = write what decides: questions, each with its words
no-question = `asks` is missing
    .mend = write the question
too-few-words = a fact with fewer than two words decides nothing
    .expected = two words or more
    .mend = write the other answers, or take the fact away
no-word-text = `says` is missing
    .mend = write it as in a sentence
comma-in-word = a case is put in words with commas between them
    .expected = a word without a comma
word-twin = the word `{ $other }` is called this too
    .expected = a word that means one answer to one fact only
    .mend = write another word, or take it away
unknown-hook-type = the vocabulary has no such hook type
    .expected = a vocabulary in which the kind `hook` has the attribute `type`
unknown-fact-word = this is no word of the fact
word-twice = this word stands here twice
    .mend = take one of them away
no-word = no word stands here
    .mend = take the line away if any answer will do
# $choices, $most
too-many-choices = the situations have { $choices } choices, which are too many
    .expected = at most { $most } in all
# $cases, $most
too-many-cases = these words make { $cases } cases, which are too many
    .expected = at most { $most }: the numbers of words multiplied
    .mend = take facts or words away
idle-technique = no situation leads to it
    .expected = a choice of some situation
    .mend = write it among the choices, or take the technique away
idle-capability = no technique needs it
    .expected = a technique with it under `needs`
    .mend = write it there, or take the capability away
no-line-cut = the last choice does not end in the line cut
    .expected = a technique with `cuts line: yes` at the end, for when nothing else goes
    .mend = add a choice that leaves the hook and cuts the line
before-itself = a situation cannot go before itself
    .expected = a situation that fits some of the same cases
    .mend = take the name away, or correct `when` of one of them
nothing-to-decide = no case fits both, so there is nothing to decide
    .expected = a situation that fits some of the same cases
    .mend = take the name away, or correct `when` of one of them
# $one, $other, $case
no-order = `{ $other }` fits the case `{ $case }` too, and neither goes before the other
    .expected = one situation that answers each case
    .mend = write `goes before: [{ $one }]` in `{ $other }`, or the other way
# $other, $case
order-in-turn = `{ $other }` goes before this one in turn, as in the case `{ $case }`
    .expected = one situation that answers each case
    .mend = take one of the two names away
# $cases, $first
unanswered = { $cases ->
        [one] no situation answers the case `{ $first }`
       *[other] no situation answers { $cases } cases, the first of them `{ $first }`
    }
    .expected = one situation that answers each case
    .mend = write a situation for it, or widen `when` of another
# $situations, $case
order-in-circle = { $situations } go before each other in a circle in the case `{ $case }`
    .expected = one situation that goes before all others that fit
    .mend = let one of them go before all the others
# $technique, $act, $case, $says
forbidden-act = `{ $technique }` is forbidden by its act `{ $act }` in the case `{ $case }`:
    { $says }
    .expected = a choice that leads to nothing that is never done
    .mend = take the choice away, or narrow `when` of the situation
# $technique, $pattern, $case
forbidden-with = `{ $technique }` is never used with `{ $pattern }`, as in the case `{ $case }`
    .expected = a choice that leads to nothing that is never done
    .mend = take the choice away, or narrow `when` of the situation

## Kinds, figures and amounts

# $is, $wanted
wrong-class = this is { $is }
    .expected = { $wanted }
# $is, $wanted
wrong-class-certificate = this is { $is }
    .expected = { $wanted }
    .mend = write a certificate under the person who holds it
# $is, $wanted
wrong-class-gear = this is { $is }
    .expected = { $wanted }
    .mend = write fishing gear under `hooks` or `lines`
