"""What a rule or a judgement reads, and which inputs stand behind it."""
