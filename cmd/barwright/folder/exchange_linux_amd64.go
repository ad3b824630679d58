package folder

// System call numbers, from the kernel's table for amd64 (asm/unistd_64.h).
const (
	sysSyncfs    = 306
	sysRenameat2 = 316
)
