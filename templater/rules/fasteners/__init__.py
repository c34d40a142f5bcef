"""What holds each piece to the wall: the load on every hole, what to put into it, what to buy."""
