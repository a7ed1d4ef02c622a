var ours = 1;
