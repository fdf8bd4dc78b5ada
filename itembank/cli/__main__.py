"""How is the command line started without an installed script? ``python -m itembank.cli``."""

from itembank.cli import main

main()
