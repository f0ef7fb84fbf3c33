"""What the loads say of a design, as findings: engineering judgement."""
