"""Pictures of the lessons: have and need drawn and named at the thing itself."""
