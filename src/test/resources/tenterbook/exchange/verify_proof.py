"""Checks one piece's proof with Python's standard library alone. Usage: verify_proof.py FILE"""
import hashlib
import json
import sys


def sha256(text):
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


def check(condition, where):
    if not condition:
        sys.exit("WRONG: " + where)


try:
    text = open(sys.argv[1], encoding="utf-8", newline="").read()
    proof = json.loads(text)
    body, _, tail = text.rpartition('\n"sha256":"')
    check(tail == sha256(body + "\n") + '"\n}\n', "the sha256 of the file")
    links = {}
    previous, sequence, before = "0" * 64, 0, None
    for row in proof["earlier"]:
        sequence += 1
        check(row[0] == sequence, "earlier revision %d" % sequence)
        previous = None
        links[sequence] = {"public": row[1], "link": row[2]}
    if proof["earlier"]:
        before = sha256(json.dumps(proof["earlier"], separators=(",", ":")))
    for chained in proof["chain"]:
        sequence += 1
        link = json.loads(chained)
        check(link["format"] == 2 and link["sequence"] == sequence, "revision %d" % sequence)
        check(previous in (None, link["previous_hash"]), "the link to revision %d" % (sequence - 1))
        check(link.get("before") == before, "the commitment in revision %d" % sequence)
        previous, before = sha256(chained), None
        links[sequence] = {"public": link["public_digest"], "private": link["private_digest"], "chained": link}
    check(sequence == proof["end_sequence"] and previous == proof["end_hash"], "the end of the chain")
    version = 0
    for sequence, which, part in proof["parts"]:
        check(sha256(part) == links[sequence][which], "the %s part of revision %d" % (which, sequence))
        if which == "link":
            links[sequence]["private"] = json.loads(part)[1]
        if which == "public":
            link = links[sequence].get("chained") or json.loads(part)
            if link["kind"] == "piece" and json.loads(part)["id"] == proof["piece"]:
                version += 1
                check(link["version"] == version, "version %d" % version)
    check(version > 0, "the piece")
    print("OK", proof["piece"], version, previous)
except (KeyError, ValueError, TypeError, IndexError) as problem:
    sys.exit("WRONG: the file: %r" % problem)
