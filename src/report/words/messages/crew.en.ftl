### Everything that skippers, crews and inspectors on deck read.
###
### A message is one paragraph, however it is broken into lines here. Figures,
### days and names arrive as finished text; a number that chooses between
### singular and plural names each class of the language. Of several arguments
### the comment above the message gives the order of the calls.

## Why a requirement is not met, or what is missing

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
