### What is read at a desk, in English only: lint, schema, comparison of
### records, catalogues.

no-profile-known = no profile is known
