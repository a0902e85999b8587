"""What a crop costs: purchases, water, nutrients, electricity and labour, by kind and by day."""
