package stage

type labels struct{}

func (st *Stage) drawLetters(sc *scene) {}
