#!/usr/bin/python3
"""The rule of thumb of the Stonechat Owners' Circle, an invented club, as a design
standard for chainwale: the plate at the pin carries one and a half times the wire on
its net section.

It is small on purpose: rule.py beside it holds what the standard says, this file how a
program in Python speaks to chainwale. To make a standard of your own, copy the folder
and change rule.py and pack/.
"""
import os
import sys
import threading
import time
from concurrent import futures

import grpc

import contract_pb2 as wire
import rule

# The cookie tells that chainwale started us and not somebody by hand.
COOKIE = ("CHAINWALE_STANDARD", "contract")
# The largest question that a standard has to take.
MOST_ASKED = 64 << 20


def unary(call, request=None):
    """One call of a service: request is the message it takes, None for one that is ignored."""
    return grpc.unary_unary_rpc_method_handler(
        lambda message, context: call(message),
        request_deserializer=request.FromString if request else None,
        response_serializer=lambda reply: reply if isinstance(reply, bytes) else reply.SerializeToString(),
    )


def services(stop):
    """What chainwale calls: the standard, a sign of life, and the end."""
    return (
        grpc.method_handlers_generic_handler("chainwale.standard.v1.Standard", {
            "Describe": unary(lambda _: rule.describe(), wire.DescribeRequest),
            "Derive": unary(rule.derive, wire.Question),
            "Working": unary(rule.working, wire.Asked),
        }),
        # A message with the number 1 in its first field: I am serving.
        grpc.method_handlers_generic_handler("grpc.health.v1.Health", {"Check": unary(lambda _: b"\x08\x01")}),
        grpc.method_handlers_generic_handler("plugin.GRPCController", {"Shutdown": unary(lambda _: (stop.set(), b"")[1])}),
    )


def end_with_parent():
    """Ends the program when chainwale is gone, however that came about."""
    parent = os.getppid()
    while os.getppid() == parent:
        time.sleep(1)
    os._exit(1)


def main():
    if os.environ.get(COOKIE[0]) != COOKIE[1]:
        sys.exit(f"this is {rule.TITLE}, a design standard for chainwale, which starts it by itself")
    threading.Thread(target=end_with_parent, daemon=True).start()
    stop = threading.Event()
    server = grpc.server(futures.ThreadPoolExecutor(max_workers=4), options=[("grpc.max_receive_message_length", MOST_ASKED)])
    server.add_generic_rpc_handlers(services(stop))
    socket = os.path.join(os.environ["PLUGIN_UNIX_SOCKET_DIR"], "standard")
    server.add_insecure_port("unix:" + socket)
    server.start()
    # go-plugin's version, the contract's, and where we listen.
    print(f"1|{rule.CONTRACT}|unix|{socket}|grpc", flush=True)
    stop.wait()
    server.stop(grace=0.1).wait()


if __name__ == "__main__":
    main()
