"""How a worksheet is declared, read, worked and answered; it knows no single one."""
