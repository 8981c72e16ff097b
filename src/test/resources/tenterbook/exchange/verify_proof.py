"""Checks one piece's proof with Python's standard library, by the description in the file. Usage: verify_proof.py FILE"""
import hashlib
import json
import sys

wrong = []


def sha256(text):
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


def check(condition, where):
    if not condition:
        wrong.append(where)


try:
    text = open(sys.argv[1], encoding="utf-8", newline="").read()
    body, _, tail = text.rpartition('\n"sha256":"')
    check(tail == sha256(body + "\n") + '"\n}\n', "the sha256 of the file")
    proof = json.loads(text)
    digests, previous, sequence, before, version = {}, "0" * 64, 0, None, 0
    for row in proof["earlier"]:
        sequence += 1
        check(row[0] == sequence, "earlier revision %d" % sequence)
        previous, digests[sequence] = None, {"public": row[1], "link": row[2]}
    if proof["earlier"]:
        before = sha256(json.dumps(proof["earlier"], separators=(",", ":")))
    for chained in proof["chain"]:
        sequence, link = sequence + 1, json.loads(chained)
        check(link["format"] == 2 and link["sequence"] == sequence, "the number of revision %d" % sequence)
        check(previous in (None, link["previous_hash"]), "the link from revision %d to %d" % (sequence, sequence - 1))
        check(link.get("before") == before, "the commitment in revision %d" % sequence)
        previous, before = sha256(chained), None
        digests[sequence] = {"public": link["public_digest"], "private": link["private_digest"], "of": link}
    check(sequence == proof["end_sequence"] and previous == proof["end_hash"], "the end of the chain")
    for sequence, which, part in proof["parts"]:
        check(sha256(part) == digests[sequence][which], "the %s part of revision %d" % (which, sequence))
        if which == "link":
            digests[sequence]["private"] = json.loads(part)[1]
        if which == "public":
            of = digests[sequence].get("of") or json.loads(part)
            if of["kind"] == "piece" and json.loads(part)["id"] == proof["piece"]:
                version += 1
                check(of["version"] == version, "version %d" % version)
    check(version > 0, "the piece")
except (KeyError, ValueError, TypeError, IndexError) as problem:
    wrong.append("the file: %r" % problem)
if wrong:
    sys.exit("WRONG: " + "; ".join(wrong))
print("OK", proof["piece"], version, previous)
