package folder

// System call numbers, from the kernel's generic table (asm-generic/unistd.h).
const (
	sysSyncfs    = 267
	sysRenameat2 = 276
)
