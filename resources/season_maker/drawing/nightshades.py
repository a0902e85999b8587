"""stub"""
def build_nightshade(state):
    raise NotImplementedError
