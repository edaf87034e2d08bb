"""`python -m scorecraft`."""

from scorecraft.cli import main

if __name__ == "__main__":
    main()
