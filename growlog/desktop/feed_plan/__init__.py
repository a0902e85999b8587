"""The feed plan of a crop."""

from growlog.desktop.feed_plan.feed_plan_dialog import FeedPlanDialog

__all__ = ["FeedPlanDialog"]
