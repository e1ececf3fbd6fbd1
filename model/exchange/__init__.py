"""Files, one module a format, reader beside writer. Exporters take a Model and a target, nothing else."""
