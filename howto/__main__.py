"""`python -m howto` runs the commands."""

from howto.cli.app import main

if __name__ == "__main__":
    main()
